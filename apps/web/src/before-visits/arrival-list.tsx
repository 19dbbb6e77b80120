import { useNavigate } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { DecisionForm, type Choice } from '../look/decision-form.js';
import { arrivalWords as words } from '../words/before-visits.js';
import { WaitingCase } from './waiting-case.js';
import { WaitingSection } from './waiting-section.js';
import type { useBeforeVisits } from './use-before-visits.js';

const CHOICES: readonly Choice<'wait' | 'move'>[] = [
  { key: 'wait', ...words.choices.wait },
  { key: 'move', ...words.choices.move },
];

/** Visits whose laboratory work has not come: wait, or move the visit while the patient can still be called. */
export function ArrivalList({ list, rows, decide }: ReturnType<typeof useBeforeVisits>['arrivals']) {
  const { role } = useSession();
  const navigate = useNavigate();
  return (
    <WaitingSection title={words.title} none={words.none} list={list} rows={rows} decide={decide}>
      {(row) => (
        <>
          <WaitingCase row={row} />
          <div>
            <p>{row.visit}</p>
            <p>{row.missing}</p>
            {row.reason ? <p className="small soft">{row.reason}</p> : null}
          </div>
          {may.actOnVisits(role) ? (
            <DecisionForm
              about={row.caseNumber}
              choices={CHOICES}
              paths={{ reason: 'note' }}
              pending={decide.isPending && decide.variables.id === row.id}
              error={decide.variables?.id === row.id ? decide.error : null}
              onDecide={({ key, reason }) => {
                decide.mutate(
                  { id: row.id, version: row.version, body: { decision: key, note: reason } },
                  {
                    onSuccess: () => {
                      if (key === 'wait' || !may.keepDesk(role)) return;
                      const { caseId, appointmentId } = row;
                      const to = '/desk/cases/$caseId/visits/$appointmentId';
                      void navigate({ to, params: { caseId, appointmentId } });
                    },
                  },
                );
              }}
            />
          ) : null}
        </>
      )}
    </WaitingSection>
  );
}
