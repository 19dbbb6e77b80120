import { Mark } from '../look/marks.js';
import { lineWords } from '../words/line.js';

/** What the shapes mean, once per screen. */
export function Legend({ wishes = false }: { wishes?: boolean }) {
  const words = lineWords.legend;
  return (
    <p className="legend" aria-hidden="true">
      <span>
        <Mark shape="to-come" /> {words.visit}
      </span>
      <span>
        <svg width="22" height="12">
          <rect x="1" y="1" width="20" height="10" rx="3" fill="currentColor" />
        </svg>
        {words.step}
      </span>
      <span>
        <svg width="16" height="12">
          <path d="M1 1 15 11" stroke="currentColor" strokeWidth="2" />
        </svg>
        {words.courier}
      </span>
      {wishes ? (
        <span>
          <svg width="12" height="12">
            <rect x="1.5" y="1.5" width="9" height="9" fill="none" className="against-wish-key" />
          </svg>
          {words.wish}
        </span>
      ) : (
        <>
          <span>
            <Mark shape="done" /> {words.done}
          </span>
          <span>
            <Mark shape="now" /> {words.now}
          </span>
          <span>
            <Mark shape="needs-person" /> {words.person}
          </span>
        </>
      )}
      <span>
        <svg width="24" height="4">
          <path d="M0 2h24" stroke="currentColor" strokeWidth="2" strokeDasharray="6 4" />
        </svg>
        {words.held}
      </span>
    </p>
  );
}
