import { Button } from '@mantine/core';
import type { RemakeAlertView } from '@archwright/contracts';
import { RippleSheet } from '../ripple/ripple-sheet.js';
import { viewerZone } from '../time/zone.js';
import { alertWords as words } from '../words/chair.js';
import type { ProposalRow } from './alert-view.js';

/** The ways to repair it side by side. */
export function Compared({ rows }: { rows: ProposalRow[] }) {
  const columns = words.columns;
  return (
    <section className="sheet scroll-x" tabIndex={0} role="group" aria-label={words.compared}>
      <table className="table">
        <caption className="unseen">{words.compared}</caption>
        <thead>
          <tr>
            <th scope="col">{columns.way}</th>
            <th scope="col">{columns.moved}</th>
            <th scope="col">{columns.untouched}</th>
            <th scope="col">{columns.delivery}</th>
            <th scope="col">{columns.wishes}</th>
            <th scope="col">{columns.other}</th>
            <th scope="col">{columns.calls}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.label}</th>
              <td>
                {row.moved} <span className="small soft">({row.least})</span>
              </td>
              <td>{row.untouched}</td>
              <td className="nowrap">{row.delivery ?? words.noDelivery}</td>
              <td>{row.againstWishes}</td>
              <td>{row.otherCases}</td>
              <td>{row.calls}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface SheetProps {
  row: ProposalRow;
  alert: RemakeAlertView;
  today: string;
  /** The first way stands open, the others open on demand: what is accepted has been seen. */
  isFirst: boolean;
  pending: boolean;
  /** Null when there is nothing to accept, or not for this person. */
  onAccept: (() => void) | null;
}

/** One way to repair it: what it costs, what moves from when to when, whom to call. */
export function ProposalSheet({ row, alert, today, isFirst, pending, onAccept }: SheetProps) {
  const ripples = alert.proposals.find(({ id }) => id === row.id)?.ripples ?? [];
  return (
    <details className="sheet sheet-pad details" open={isFirst ? true : undefined}>
      <summary>
        <h3 className="proposal-name">{row.label}</h3>
      </summary>
      <div className="stack">
        <p className="soft">{row.sentence}</p>
        {ripples.map((ripple) => (
          <RippleSheet key={ripple.id} ripple={ripple} zone={alert.zone} today={today} viewer={viewerZone()} />
        ))}
        {onAccept ? (
          <div>
            <Button size="md" loading={pending} aria-label={words.acceptOf(row.label)} onClick={onAccept}>
              {words.accept}
            </Button>
          </div>
        ) : null}
      </div>
    </details>
  );
}
