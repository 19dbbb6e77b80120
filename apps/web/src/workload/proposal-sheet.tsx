import { Button } from '@mantine/core';
import { CaseLink } from '../lab-case/case-link.js';
import { Tag } from '../look/marks.js';
import { workloadWords as words } from '../words/workload.js';
import type { Effect, ProposalCard } from './workload-view.js';

interface Props {
  card: ProposalCard;
  mayAccept: boolean;
  pending: boolean;
  onAccept: () => void;
}

/** One proposal with everything it would do, before anybody accepts it. */
export function ProposalSheet({ card, mayAccept, pending, onAccept }: Props) {
  return (
    <article className="sheet proposal stack-tight" aria-labelledby={`proposal-${card.id}`}>
      <div className="row">
        <h3 id={`proposal-${card.id}`}>{card.title}</h3>
        {card.decided ? <Tag>{card.decided}</Tag> : null}
        {mayAccept && card.decided === null && card.visits.length === 0 ? (
          <Button
            className="push no-print"
            size="compact-md"
            disabled={pending}
            aria-label={words.acceptOf(card.title)}
            onClick={onAccept}
          >
            {words.accept}
          </Button>
        ) : null}
      </div>
      <p>{card.sentence}</p>
      <p className="small soft">{card.certainty}</p>
      {card.visits.length > 0 ? (
        <>
          {card.decided === null ? <p className="notice">{words.byDesk}</p> : null}
          <p className="small strong">{words.visits(card.visits.length)}</p>
          <ul className="lines">
            {card.visits.map((visit) => (
              <li key={visit.key} className="line small">
                <CaseLink caseId={visit.caseId} number={visit.caseNumber} /> {visit.what} ·{' '}
                <span className="nowrap">{visit.when}</span>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <EffectTable effects={card.effects} />
      {card.overtime.length > 0 ? (
        <div className="small">
          <p className="strong">{words.overtimeTitle}</p>
          <ul className="bullets">
            {card.overtime.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      ) : null}
      <DayTable card={card} />
      <details>
        <summary>{words.moves(card.moves.length)}</summary>
        <ul className="lines">
          {card.moves.map((move) => (
            <li key={move.key} className="line small">
              <CaseLink caseId={move.caseId} number={move.caseNumber} /> {move.title} · {move.where} ·{' '}
              <span className="nowrap">{move.when}</span>
            </li>
          ))}
        </ul>
      </details>
    </article>
  );
}

/** What is now beside what would be. */
export function EffectTable({ effects }: { effects: Effect[] }) {
  return (
    <table className="effect-table">
      <caption className="unseen">{words.effectTitle}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">{words.figure}</span>
          </th>
          <th scope="col">{words.now}</th>
          <th scope="col">{words.then}</th>
        </tr>
      </thead>
      <tbody>
        {effects.map(({ name, now, then }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{now}</td>
            <td className="strong">{then}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The table is also the picture: ground by the load that a day would have, stripes over its open time. */
function DayTable({ card: { title, days } }: { card: ProposalCard }) {
  if (days.rows.length === 0) return null;
  return (
    <div className="scroll-x" tabIndex={0} role="group" aria-label={words.daysTitleOf(title)}>
      <table className="load-table">
        <caption className="unseen">{words.daysTitle}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">{words.centre}</span>
            </th>
            {days.heads.map(({ on, label }) => (
              <th key={on} scope="col" className="changed-day">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {days.rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.name}</th>
              {row.cells.map(({ on, load, text, label }) => (
                <td key={on} className={load === null ? undefined : `changed-cell load-${String(load)}`}>
                  <span aria-hidden="true">{text}</span>
                  <span className="unseen">{label}</span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
