import { memo } from 'react';
import { deskWords } from '../words/desk.js';
import type { DayPart, DayRow } from './desk-day-view.js';
import { VisitRow } from './visit-row.js';

interface Props {
  part: DayPart;
  mayAct: boolean;
  mayChange: boolean;
  /** False where the part is a clinic itself. */
  showsClinic: boolean;
  /** The visit that is being changed; null when none is. */
  pendingId: string | null;
  onAct: (deed: Pick<DayRow, 'id' | 'version'> & { action: DayRow['actions'][number]['action'] }) => void;
}

/** One part of the day: its visits in order, and what comes next for each. On paper, a box to tick stands in its place. */
export const DayTable = memo(function DayTable({ part, mayAct, mayChange, showsClinic, pendingId, onAct }: Props) {
  const columns = deskWords.columns;
  const headingId = `part-${part.key.replaceAll(' ', '-')}`;
  return (
    <section className="stack-tight day-part">
      <div className="row">
        <h2 id={headingId}>{part.title}</h2>
        <span className="soft small">{deskWords.visits(part.rows.length)}</span>
      </div>
      <div className="sheet scroll-x" tabIndex={0} role="group" aria-labelledby={headingId}>
        <table className="table day-table">
          <thead>
            <tr>
              <th scope="col">{columns.time}</th>
              <th scope="col">{columns.patient}</th>
              <th scope="col">{columns.visit}</th>
              <th scope="col">{columns.with}</th>
              <th scope="col">{columns.state}</th>
              <th scope="col" className="no-print">
                {columns.act}
              </th>
              <th scope="col" className="print-only">
                {deskWords.sheetTicks}
              </th>
            </tr>
          </thead>
          <tbody>
            {part.rows.map((row) => (
              <VisitRow
                key={row.id}
                row={row}
                mayAct={mayAct}
                mayChange={mayChange}
                showsClinic={showsClinic}
                pending={pendingId === row.id}
                onAct={(action) => {
                  onAct({ id: row.id, version: row.version, action });
                }}
              />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
});
