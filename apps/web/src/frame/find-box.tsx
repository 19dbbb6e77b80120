import { useNavigate, useRouterState } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import { frameWords } from '../words/frame.js';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));

/** One search for everything; `/` jumps to it from anywhere. Results stand on their own page and follow the typing. */
export function FindBox() {
  const navigate = useNavigate();
  const onFindPage = useRouterState({ select: (state) => state.location.pathname === '/find' });
  const input = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState('');

  useEffect(() => {
    function jump(event: KeyboardEvent): void {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      event.preventDefault();
      input.current?.focus();
      input.current?.select();
    }
    document.addEventListener('keydown', jump);
    return () => {
      document.removeEventListener('keydown', jump);
    };
  }, []);

  useEffect(() => {
    if (!onFindPage) return undefined;
    const timer = setTimeout(() => {
      void navigate({ to: '/find', search: typed.trim() ? { q: typed.trim() } : {}, replace: true });
    }, 250);
    return () => {
      clearTimeout(timer);
    };
  }, [typed, onFindPage, navigate]);

  return (
    <form
      role="search"
      className="find"
      onSubmit={(event) => {
        event.preventDefault();
        void navigate({ to: '/find', search: typed.trim() ? { q: typed.trim() } : {} });
      }}
    >
      <input
        ref={input}
        type="search"
        aria-label={frameWords.find}
        aria-keyshortcuts="/"
        placeholder={frameWords.find}
        value={typed}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
        }}
      />
      <kbd aria-hidden="true">/</kbd>
    </form>
  );
}
