/** State by shape and line first: done is filled, now a thick ring, to come hollow, needs a person a diamond. */
export type MarkShape = 'done' | 'now' | 'to-come' | 'needs-person' | 'missed';

/** A small mark for running text and lists; the words beside it say the same, so it is hidden from screen readers. */
export function Mark({ shape }: { shape: MarkShape }) {
  return (
    <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" className="mark-shape" data-shape={shape}>
      {shape === 'needs-person' ? (
        <>
          <path d="M8 1.2 14.8 8 8 14.8 1.2 8Z" fill="none" stroke="currentColor" strokeWidth="1.8" />
          <path d="M8 4.6v4M8 10.4v1.2" stroke="currentColor" strokeWidth="1.8" />
        </>
      ) : null}
      {shape === 'done' ? <circle cx="8" cy="8" r="5.5" fill="currentColor" /> : null}
      {shape === 'now' ? <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" strokeWidth="3.4" /> : null}
      {shape === 'to-come' ? <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" strokeWidth="1.6" /> : null}
      {shape === 'missed' ? (
        <>
          <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" strokeWidth="1.6" />
          <path d="M4.4 11.6 11.6 4.4" stroke="currentColor" strokeWidth="1.6" />
        </>
      ) : null}
    </svg>
  );
}

export type Tone = 'plain' | 'go' | 'caution' | 'stop' | 'accent';

const SIGN: Record<Tone, string> = { plain: '', accent: '', go: '✓', caution: '▲', stop: '◆' };

/** A word with its sign and ground. The word carries the meaning. */
export function Tag({ tone = 'plain', children }: { tone?: Tone; children: string }) {
  return (
    <span className={`tag tag-${tone}`}>
      {SIGN[tone] ? <span aria-hidden="true">{SIGN[tone]}</span> : null}
      {children}
    </span>
  );
}
