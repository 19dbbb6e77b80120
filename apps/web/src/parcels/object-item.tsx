import { DecisionForm } from '../look/decision-form.js';
import { Tag } from '../look/marks.js';
import { objectWords as words } from '../words/parcels.js';
import { DisinfectForm } from './disinfect-form.js';
import { deedBody, type ObjectRow } from './parcels-view.js';
import type { useParcels } from './use-parcels.js';

type Props = { row: ObjectRow; clock: { zone: string; today: string } } & Pick<
  ReturnType<typeof useParcels>,
  'declare' | 'deed'
>;

/** One thing in hand: how it stands, what is declared of it, and on demand what may be done with it. */
export function ObjectItem({ row, clock, declare, deed }: Props) {
  const isDeclaring = declare.variables?.id === row.id;
  const isActing = deed.variables?.id === row.id;
  return (
    <li className="line stack-tight">
      <div className="row">
        <span className="strong">{row.name}</span>
        <Tag tone={row.tone}>{row.state}</Tag>
        <span className="soft">{row.kind}</span>
      </div>
      {row.declared ? <p className="small soft">{row.declared}</p> : null}
      {row.against ? <p className="small">{row.against}</p> : null}
      {row.mayDeclare || row.deeds.length > 0 ? (
        <details className="details no-print">
          <summary>{words.open(row.code)}</summary>
          <div className="stack">
            {row.mayDeclare ? (
              <DisinfectForm
                objectId={row.id}
                caution={row.caution}
                clock={clock}
                declare={{
                  error: isDeclaring ? declare.error : null,
                  isPending: isDeclaring && declare.isPending,
                  reset: declare.reset,
                  mutateAsync: (body) => declare.mutateAsync({ id: row.id, body }),
                }}
              />
            ) : null}
            <DecisionForm
              about={row.code}
              choices={row.deeds}
              paths={{ reason: 'reason' }}
              pending={isActing && deed.isPending}
              error={isActing ? deed.error : null}
              onDecide={({ key, reason }) => {
                deed.mutate({ id: row.id, version: row.version, body: deedBody(key, reason) });
              }}
            />
          </div>
        </details>
      ) : null}
    </li>
  );
}
