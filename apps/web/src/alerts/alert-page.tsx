import type { RemakeAlertView } from '@archwright/contracts';
import { Link, useParams } from '@tanstack/react-router';
import { hasStatus } from '../api/errors.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { alertWords as words } from '../words/chair.js';
import { archWords } from '../words/line.js';
import { alertSentence, proposalRows } from './alert-view.js';
import { DismissForm } from './dismiss-form.js';
import { Compared, ProposalSheet } from './proposal-sheet.js';
import { isUndecided } from './undecided.js';
import { useAlert } from './use-alert.js';

function What({ alert }: { alert: RemakeAlertView }) {
  return (
    <section className="sheet sheet-pad stack-tight">
      <h2>{words.why}</h2>
      <p>{alert.reason}</p>
      <div className="row">
        <Tag tone="caution">{words.returnTo(alert.returnToTitle)}</Tag>
        <span>{words.foundAt(alert.stageTitle)}</span>
        <span>{archWords(alert.arches)}</span>
      </div>
      <h3>{words.discards}</h3>
      {alert.discards.length === 0 ? (
        <p className="soft">{words.discardsNothing}</p>
      ) : (
        <ul className="bullets">
          {alert.discards.map((object) => (
            <li key={object}>{object}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** What has to be made again, what that discards, and the ways to repair the plan, compared. Nothing moves by itself. */
export function AlertPage() {
  const { alertId } = useParams({ from: '/inside/chair/alerts/$alertId' });
  const { role } = useSession();
  const { practice, alert, accept, dismiss } = useAlert(alertId);
  if (!alert.data) {
    return <NotYet asked={alert} what={words.loading} />;
  }
  const known = alert.data;
  const undecided = isUndecided(known);
  const rows = proposalRows(known, practice.today);
  const error = accept.error ?? dismiss.error;
  const stale = hasStatus(error, 412) || hasStatus(error, 409);
  const title = undecided ? words.title : words.decidedTitle;

  return (
    <div className="roomy">
      <ScreenHead title={title(known.caseNumber, known.patientName)} sentence={alertSentence(known, practice.today)}>
        <Link to="/desk/cases/$caseId" params={{ caseId: known.caseId }}>
          {words.theCase}
        </Link>
      </ScreenHead>
      <div className="stack">
        {stale ? <Notice tone="caution">{words.stale}</Notice> : <Refusal error={error} />}
        <What alert={known} />
        {undecided || rows.length > 0 ? <h2>{undecided ? words.proposals : words.acceptedWay}</h2> : null}
        {undecided && rows.length === 0 ? (
          <p className="soft" role="status">
            {known.noProposalReason ?? words.noneYet}
          </p>
        ) : null}
        {undecided && rows.length > 1 ? <Compared rows={rows} /> : null}
        {rows.map((row, index) => (
          <ProposalSheet
            key={row.id}
            row={row}
            alert={known}
            today={practice.today}
            isFirst={index === 0}
            pending={accept.isPending && accept.variables.proposalId === row.id}
            onAccept={
              undecided && may.acceptProposals(role)
                ? () => {
                    accept.mutate({ proposalId: row.id, planHash: row.planHash });
                  }
                : null
            }
          />
        ))}
        {undecided && may.treat(role) ? (
          <>
            <p>
              {words.otherwise}{' '}
              <Link to="/desk/cases/$caseId" params={{ caseId: known.caseId }} className="action">
                {words.theCase}
              </Link>
            </p>
            <DismissForm alertId={known.id} dismiss={dismiss} />
          </>
        ) : null}
      </div>
    </div>
  );
}
