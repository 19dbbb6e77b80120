import { Link } from '@tanstack/react-router';
import { memo } from 'react';
import { deskWords } from '../words/desk.js';
import { CallCards } from './call-cards.js';
import { useCalls } from './use-calls.js';

const SHOWN = 3;

/** The next few calls, beside the day. */
export const CallSummary = memo(function CallSummary() {
  const calls = useCalls();
  const open = calls.rows.filter((row) => row.open);
  return (
    <aside className="stack-tight no-print" aria-labelledby="calls-beside">
      <div className="row">
        <h2 id="calls-beside">{deskWords.callsShort}</h2>
        {open.length > SHOWN ? (
          <Link to="/desk/calls" className="small push">
            {deskWords.allCalls(open.length)}
          </Link>
        ) : null}
      </div>
      <CallCards calls={calls} rows={open.slice(0, SHOWN)} />
    </aside>
  );
});
