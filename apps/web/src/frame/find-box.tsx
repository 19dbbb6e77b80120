import { useNavigate, useRouterState, useSearch } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));

interface Props {
  /** The page of the results; a laboratory has one of its own. */
  to: '/find' | '/bench/find';
  label: string;
}

/**
 * One search for everything; `/` jumps to it from anywhere. Results stand on their own page and follow the typing; the
 * down arrow goes to the first.
 */
export function FindBox({ to, label }: Props) {
  const navigate = useNavigate();
  const onFindPage = useRouterState({ select: (state) => state.location.pathname === to });
  const { q } = useSearch({ strict: false });
  const input = useRef<HTMLInputElement>(null);
  // A page of results that is opened by its address goes on where it was.
  const [typed, setTyped] = useState(() => (onFindPage ? (q ?? '') : ''));

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
      void navigate({ to, search: typed.trim() ? { q: typed.trim() } : {}, replace: true });
    }, 250);
    return () => {
      clearTimeout(timer);
    };
  }, [typed, onFindPage, navigate, to]);

  return (
    <form
      role="search"
      className="find"
      onSubmit={(event) => {
        event.preventDefault();
        void navigate({ to, search: typed.trim() ? { q: typed.trim() } : {} });
      }}
    >
      <input
        ref={input}
        type="search"
        aria-label={label}
        aria-keyshortcuts="/"
        placeholder={label}
        value={typed}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowDown' || !onFindPage) return;
          event.preventDefault();
          document.querySelector<HTMLElement>('#work :is(li, p) a')?.focus();
        }}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
        }}
      />
      <kbd aria-hidden="true">/</kbd>
    </form>
  );
}
