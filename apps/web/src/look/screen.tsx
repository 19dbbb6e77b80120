import { useEffect, useRef, type ReactNode } from 'react';
import { frameWords } from '../words/frame.js';

/** Top of every screen: what it shows, one sentence on what needs a person, and the screen's own actions. */
export function ScreenHead({
  title,
  sentence,
  children,
}: {
  title: string;
  sentence?: ReactNode;
  children?: ReactNode;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · ${frameWords.name}`;
  }, [title]);
  useEffect(() => {
    // A new screen takes the focus, so that keyboard and screen reader start at its heading; typing elsewhere is left alone.
    const active = document.activeElement;
    if (active instanceof HTMLInputElement && active.type === 'search') return;
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, []);
  return (
    <header className="screen-head">
      <div>
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {sentence ? <p className="sentence">{sentence}</p> : null}
      </div>
      {children ? <div className="row push no-print">{children}</div> : null}
    </header>
  );
}

/** The old picture stays while a new one is fetched, dimmed and marked busy. */
export function Waiting({ busy, children }: { busy: boolean; children: ReactNode }) {
  return (
    <div className={busy ? 'waiting' : undefined} aria-busy={busy}>
      {children}
    </div>
  );
}

/** Before there is any picture at all. */
export function FirstWait({ what }: { what: string }) {
  return (
    <p className="soft" role="status">
      {frameWords.loading(what)}
    </p>
  );
}

export function Empty({ children }: { children: ReactNode }) {
  return <div className="empty">{children}</div>;
}
