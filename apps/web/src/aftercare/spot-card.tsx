import { DecisionForm } from '../look/decision-form.js';
import { Tag } from '../look/marks.js';
import { adjustmentWords, healingWords as words } from '../words/aftercare.js';
import { AdjustmentForm } from './adjustment-form.js';
import type { AdjustmentRow, SpotRow } from './aftercare-view.js';
import type { useAftercare } from './use-aftercare.js';

interface Props extends Pick<ReturnType<typeof useAftercare>, 'adjust' | 'heal' | 'refer'> {
  row: SpotRow;
  mayTreat: boolean;
}

export function Adjustments({ rows }: { rows: readonly AdjustmentRow[] }) {
  return (
    <ul className="bullets">
      {rows.map((row) => (
        <li key={row.id}>
          {row.what} <span className="small soft">{row.done}</span>
        </li>
      ))}
    </ul>
  );
}

/** One sore spot: how it stands, what was done for it, and what may be done now. */
export function SpotCard({ row, mayTreat, adjust, heal, refer }: Props) {
  const isHealing = heal.variables?.id === row.id;
  const isAdjusting = adjust.variables?.soreSpotId === row.id;
  return (
    <li className="line stack-tight">
      <div className="row">
        <span className="strong">{row.place}</span>
        <Tag tone={row.tone}>{row.state}</Tag>
        <span className="soft">
          {row.pain} · {row.cause}
        </span>
      </div>
      <div>
        <p className="small soft">{row.found}</p>
        {row.isOpen ? <p className="small">{row.watch}</p> : null}
        {row.note ? <p>{row.note}</p> : null}
      </div>
      <Adjustments rows={row.adjustments} />
      {row.referral ? <Referral row={row} mayTreat={mayTreat} refer={refer} /> : null}
      {row.isOpen && mayTreat ? (
        <>
          <AdjustmentForm
            arches={[row.arch]}
            soreSpotId={row.id}
            summary={adjustmentWords.adjustHere(row.place)}
            pending={isAdjusting && adjust.isPending}
            error={isAdjusting ? adjust.error : null}
            onRecord={(body, done) => {
              adjust.mutate(body, { onSuccess: done });
            }}
          />
          <DecisionForm
            about={row.place}
            choices={[{ key: 'heal', ...words.heal, hasReason: false }]}
            paths={{ reason: 'reason', on: 'healedOn' }}
            pending={isHealing && heal.isPending}
            error={isHealing ? heal.error : null}
            onDecide={({ on }) => {
              heal.mutate({ id: row.id, version: row.version, body: { healedOn: on } });
            }}
          />
        </>
      ) : null}
    </li>
  );
}

/** The program reminds; the licensed clinician decides, with a reason where nobody is referred. */
function Referral({ row, mayTreat, refer }: Pick<Props, 'row' | 'mayTreat' | 'refer'>) {
  const task = row.referral;
  if (!task) return null;
  const isMine = refer.variables?.id === task.id;
  return (
    <div className={task.isOpen ? 'notice notice-stop stack-tight' : 'stack-tight'}>
      <p>
        <strong>{task.isOpen ? words.referral : task.state}</strong> {task.isOpen ? task.reason : task.decided}
      </p>
      {task.isOpen && mayTreat ? (
        <DecisionForm
          key={task.id}
          about={row.place}
          choices={[
            { key: 'referred', ...words.choices.referred, mayBeSilent: true },
            { key: 'declined', ...words.choices.declined },
          ]}
          paths={{ reason: 'note' }}
          pending={isMine && refer.isPending}
          error={isMine ? refer.error : null}
          onDecide={({ key, reason }) => {
            const body = key === 'referred' ? { decision: key, note: reason || null } : { decision: key, note: reason };
            refer.mutate({ id: task.id, version: task.version, body });
          }}
        />
      ) : null}
    </div>
  );
}
