import { Checkbox } from '@mantine/core';
import { ticketWords as words } from '../words/tickets.js';
import { ScanCode } from './scan-code.js';
import type { Ticket } from './ticket-view.js';

interface Props {
  ticket: Ticket;
  printed: string;
  isChosen: boolean;
  /** Null where there is only this one. */
  onChoose: ((isChosen: boolean) => void) | null;
}

/** One ticket as it will lie on the bench; one that is not chosen stays in sight and is not printed. */
export function TicketSheet({ ticket, printed, isChosen, onChoose }: Props) {
  return (
    <li className={isChosen ? 'ticket-place' : 'ticket-place no-print'}>
      {onChoose ? (
        <Checkbox
          className="no-print"
          label={words.choose(ticket.job)}
          checked={isChosen}
          onChange={(event) => {
            onChoose(event.currentTarget.checked);
          }}
        />
      ) : null}
      <article className={isChosen ? 'ticket' : 'ticket ticket-left-out'} aria-label={ticket.job}>
        <header className="ticket-head">
          <div>
            <p className="ticket-number">{ticket.number}</p>
            <p className="ticket-step">{ticket.step}</p>
          </div>
          <figure className="ticket-code">
            <ScanCode address={ticket.address} label={words.code(ticket.job)} />
            <figcaption>{words.scan}</figcaption>
          </figure>
        </header>
        {ticket.avoid.length > 0 ? (
          <div className="ticket-avoid">
            <p className="strong">
              <span aria-hidden="true">◆</span> {words.avoid}
            </p>
            <ul>
              {ticket.avoid.map((material) => (
                <li key={material}>{material}</li>
              ))}
            </ul>
          </div>
        ) : null}
        <dl className="ticket-facts">
          <dt>{words.due}</dt>
          <dd className="strong">{ticket.due}</dd>
          <dt>{words.bench}</dt>
          <dd>{ticket.bench}</dd>
          <dt>{words.begins}</dt>
          <dd>{ticket.begins}</dd>
          <dt>{words.handsOn}</dt>
          <dd>{ticket.handsOn}</dd>
        </dl>
        <p className="ticket-foot">{printed}</p>
      </article>
    </li>
  );
}
