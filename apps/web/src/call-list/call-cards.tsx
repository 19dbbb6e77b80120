import { Refusal } from '../look/notice.js';
import { Empty } from '../look/screen.js';
import { deskWords } from '../words/desk.js';
import { CallCard } from './call-card.js';
import type { CallRow } from './call-list-view.js';
import type { useCalls } from './use-calls.js';

/** A list of calls in which each can be answered for. */
export function CallCards({ calls, rows }: { calls: ReturnType<typeof useCalls>; rows: CallRow[] }) {
  return (
    <>
      <Refusal error={calls.list.error ?? calls.record.error} onRetry={() => void calls.list.refetch()} />
      <ul className="sheet lines">
        {rows.length === 0 && calls.list.data ? (
          <li>
            <Empty>{deskWords.noCalls}</Empty>
          </li>
        ) : null}
        {rows.map((row) => (
          <CallCard
            key={row.id}
            row={row}
            pending={calls.record.isPending && calls.record.variables.id === row.id}
            onOutcome={(outcome) => {
              calls.record.mutate({ id: row.id, version: row.version, outcome });
            }}
          />
        ))}
      </ul>
    </>
  );
}
