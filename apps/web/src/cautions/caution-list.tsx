import { DecisionForm } from '../look/decision-form.js';
import { Empty } from '../look/screen.js';
import { cautionWords as words } from '../words/cautions.js';
import type { CautionRow } from './cautions-view.js';
import type { useCautions } from './use-cautions.js';

interface Props {
  rows: readonly CautionRow[];
  end: ReturnType<typeof useCautions>['end'];
}

/** Cautions in force, each with the way to end it, and those that ended with their reasons. */
export function CautionLists({ rows, end }: Props) {
  const inForce = rows.filter(({ ended }) => ended === null);
  const over = rows.filter(({ ended }) => ended !== null);
  return (
    <div className="stack">
      <section className="stack-tight" aria-labelledby="in-force">
        <h2 id="in-force">{words.inForce}</h2>
        <ul className="sheet lines">
          {inForce.length === 0 ? (
            <li>
              <Empty>{words.none}</Empty>
            </li>
          ) : null}
          {inForce.map((row) => (
            <li key={row.id} className="line stack-tight">
              <div>
                <p className="strong">{row.text}</p>
                <p className="small soft">{row.recorded}</p>
              </div>
              <DecisionForm
                about={row.text}
                choices={[{ key: 'end', ...words.end }]}
                paths={{ reason: 'reason' }}
                pending={end.isPending && end.variables.id === row.id}
                error={end.variables?.id === row.id ? end.error : null}
                onDecide={({ reason }) => {
                  end.mutate({ id: row.id, version: row.version, body: { reason } });
                }}
              />
            </li>
          ))}
        </ul>
      </section>
      {over.length > 0 ? (
        <section className="stack-tight" aria-labelledby="ended">
          <h2 id="ended">{words.ended}</h2>
          <ul className="sheet lines">
            {over.map((row) => (
              <li key={row.id} className="line">
                <p>{row.text}</p>
                <p className="small soft">{row.recorded}</p>
                <p className="small soft">{row.ended}</p>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </div>
  );
}
