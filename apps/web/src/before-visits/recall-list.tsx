import { Link } from '@tanstack/react-router';
import type { DecideRecall } from '@archwright/contracts';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { DecisionForm, type Choice, type Given } from '../look/decision-form.js';
import { Tag } from '../look/marks.js';
import { Phone } from '../look/phone.js';
import { recallWords as words } from '../words/before-visits.js';
import { WaitingCase } from './waiting-case.js';
import { WaitingSection } from './waiting-section.js';
import type { useBeforeVisits } from './use-before-visits.js';

type Decision = DecideRecall['decision'];

const CHOICES: readonly Choice<Decision>[] = [
  { key: 'put-off', ...words.choices['put-off'] },
  { key: 'done', ...words.choices.done },
  { key: 'declined', ...words.choices.declined },
];

const bodyOf = ({ key, reason, on }: Given<Decision>): DecideRecall =>
  key === 'put-off' ? { decision: key, dueOn: on, reason } : { decision: key, reason };

/** Checks after placement that are due and have no visit: book one, or say what becomes of it. */
export function RecallList({ list, rows, decide }: ReturnType<typeof useBeforeVisits>['recalls']) {
  const { role } = useSession();
  return (
    <WaitingSection title={words.title} none={words.none} list={list} rows={rows} decide={decide}>
      {(row) => (
        <>
          <WaitingCase row={row}>
            <Phone number={row.phone} />
            <span className="push">
              <Tag tone={row.isOverdue ? 'caution' : 'plain'}>{row.due}</Tag>
            </span>
          </WaitingCase>
          <p>{row.title}</p>
          {may.openCases(role) ? (
            <>
              <div>
                <Link
                  to="/desk/cases/$caseId/offers"
                  params={{ caseId: row.caseId }}
                  search={{ review: row.stage }}
                  aria-label={words.bookFor(row.patientName)}
                >
                  {words.book}
                </Link>
              </div>
              <DecisionForm
                about={words.about(row.title, row.caseNumber)}
                choices={CHOICES}
                paths={{ reason: 'reason', on: 'dueOn' }}
                pending={decide.isPending && decide.variables.id === row.id}
                error={decide.variables?.id === row.id ? decide.error : null}
                onDecide={(given) => {
                  decide.mutate({ id: row.id, version: row.version, body: bodyOf(given) });
                }}
              />
            </>
          ) : null}
        </>
      )}
    </WaitingSection>
  );
}
