import { Link, type ErrorComponentProps } from '@tanstack/react-router';
import { Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { frameWords } from '../words/frame.js';

/** On a screen behind the sign-in: nothing stands under this address, or nothing any more. */
export function NothingHere() {
  return (
    <>
      <ScreenHead title={frameWords.notFoundTitle} sentence={frameWords.notFound} />
      <Link to="/">{frameWords.home}</Link>
    </>
  );
}

export function NotFound() {
  return (
    <main className="main">
      <NothingHere />
    </main>
  );
}

/** Last resort for a page that could not be drawn or a server that could not be reached at the start. */
export function Crash({ error, reset }: ErrorComponentProps) {
  return (
    <main className="main stack">
      <ScreenHead title={frameWords.crashTitle} />
      <Refusal error={error} onRetry={reset} />
      <a href="/">{frameWords.home}</a>
    </main>
  );
}
