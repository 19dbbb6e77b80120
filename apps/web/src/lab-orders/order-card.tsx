import { CaseLink } from '../lab-case/case-link.js';
import { DecisionForm } from '../look/decision-form.js';
import { Mark, Tag } from '../look/marks.js';
import { labCaseWords } from '../words/bench.js';
import { labOrderWords as words } from '../words/lab-orders.js';
import { orderAction, type OrderRow } from './lab-order-view.js';
import { useOrderAction } from './use-lab-orders.js';

interface Props {
  row: OrderRow;
  zone: string;
  /** Told once the server has it. */
  onDone: (said: string) => void;
}

/** One order: what is to be made by when, how it stands, and the word that this side may give. */
export function OrderCard({ row, zone, onDone }: Props) {
  const act = useOrderAction(row);
  return (
    <li className="line stack-tight">
      <div className="stack-none">
        <p>
          {row.caseId === null ? (
            <span className="strong">{row.number}</span>
          ) : (
            <CaseLink caseId={row.caseId} number={row.number} />
          )}{' '}
          {row.work}
        </p>
        <p className="small soft">{row.facts.join(' · ')}</p>
        <p className="small row">
          <span className="case-state" data-shape={row.mark}>
            <Mark shape={row.mark} /> {row.state}
          </span>
          {row.care === null ? null : <Tag tone="stop">{row.care}</Tag>}
        </p>
        {row.declined ? <p>{row.declined}</p> : null}
      </div>
      <details className="details">
        <summary aria-label={`${words.contents}: ${row.about}`}>{words.contents}</summary>
        <dl className="pairs small">
          {row.values.map(({ name, value }, index) => (
            <div key={`${name} ${String(index)}`} className="pair">
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
          <dt>{labCaseWords.objects}</dt>
          <dd>{row.objects}</dd>
        </dl>
      </details>
      {row.choices.length > 0 ? (
        <DecisionForm
          key={row.version}
          about={row.about}
          choices={row.choices}
          paths={{ reason: 'reason', on: 'promisedAt' }}
          pending={act.isPending}
          error={act.error}
          onDecide={(given) => {
            const action = orderAction(given, row, zone);
            if (action === null) return;
            act.mutate(action, {
              onSuccess: () => {
                onDone(words.done(words.choices[given.key].label, row.number));
              },
            });
          }}
        />
      ) : null}
    </li>
  );
}
