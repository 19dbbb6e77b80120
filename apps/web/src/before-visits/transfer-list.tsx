import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { DecisionForm } from '../look/decision-form.js';
import { transferWords as words } from '../words/before-visits.js';
import { WaitingCase } from './waiting-case.js';
import { WaitingSection } from './waiting-section.js';
import type { useBeforeVisits } from './use-before-visits.js';

/** Cases that are to go on elsewhere, with all that goes along, and the word of the clinic that takes over. */
export function TransferList({ list, rows, decide }: ReturnType<typeof useBeforeVisits>['transfers']) {
  const { role } = useSession();
  return (
    <WaitingSection title={words.title} none={words.none} list={list} rows={rows} decide={decide}>
      {(row) => (
        <>
          <WaitingCase row={row} />
          <div>
            <p>{row.sentence}</p>
            <p>{row.reason}</p>
            {row.goesAlong.map((line) => (
              <p key={line} className="small soft">
                {line}
              </p>
            ))}
          </div>
          {may.actOnVisits(role) && row.answers.length > 0 ? (
            <DecisionForm
              about={row.caseNumber}
              choices={row.answers}
              paths={{ reason: 'reason' }}
              pending={decide.isPending && decide.variables.id === row.id}
              error={decide.variables?.id === row.id ? decide.error : null}
              onDecide={({ key, reason }) => {
                decide.mutate({ id: row.id, version: row.version, body: { decision: key, reason } });
              }}
            />
          ) : (
            <p className="small soft">{words.elsewhere}</p>
          )}
        </>
      )}
    </WaitingSection>
  );
}
