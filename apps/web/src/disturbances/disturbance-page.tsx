import { Button } from '@mantine/core';
import type { DisturbanceView } from '@archwright/contracts';
import { Link, useParams } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun } from '../look/outrun.js';
import { ScreenHead } from '../look/screen.js';
import { disturbanceWords as words } from '../words/disturbances.js';
import { apart } from '../words/plural.js';
import { affectedRows, decisionsOn, isUndecided, timeOf } from './disturbance-view.js';
import { RepairSheet } from './repair-sheet.js';
import { useDisturbance } from './use-disturbance.js';

function Affected({ known, today }: { known: DisturbanceView; today: string }) {
  const rows = affectedRows(known, today);
  const visits = known.affected.reduce((sum, each) => sum + each.visits.length, 0);
  return (
    <section className="sheet sheet-pad stack-tight">
      <h2>{words.affectedTitle}</h2>
      <p className="strong">{rows.length === 0 ? words.nobody : words.affected(rows.length, visits)}</p>
      <ul className="bullets">
        {rows.map(({ caseId, caseNumber, patient, falls }) => (
          <li key={caseId}>
            {patient === '' ? (
              words.otherClinic
            ) : (
              <Link to="/desk/cases/$caseId" params={{ caseId }} className="action">
                {patient} · {caseNumber}
              </Link>
            )}
            : {apart(falls)}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** One absence, breakdown or closure: who is affected, and the ways to repair it. Nothing moves by itself. */
export function DisturbancePage() {
  const { disturbanceId } = useParams({ from: '/inside/desk/falls-away/$disturbanceId' });
  const { role } = useSession();
  const { practice, known: found, accept, decide } = useDisturbance(disturbanceId);
  const { today } = practice;
  if (!found.data) {
    return <NotYet asked={found} what={words.loading} />;
  }
  const known = found.data;
  const undecided = isUndecided(known);
  const error = accept.error ?? decide.error;
  const mayAccept = undecided && may.keepDesk(role);
  return (
    <div className="roomy">
      <ScreenHead title={known.label} sentence={timeOf(known, today)}>
        <Link to="/desk/falls-away">{words.title}</Link>
      </ScreenHead>
      <div className="stack">
        {isOutrun(error) ? <Notice tone="caution">{words.stale}</Notice> : <Refusal error={error} />}
        <p>{words.why(known.reason)}</p>
        {undecided && known.isClosed ? <p className="soft">{words.isClosed}</p> : null}
        {undecided ? <Affected known={known} today={today} /> : null}
        <h2>{undecided ? words.proposals : words.states[known.state]}</h2>
        {undecided && known.proposals.length === 0 ? (
          <p className="soft" role="status">
            {known.noProposalReason ?? words.noneYet}
          </p>
        ) : null}
        {known.proposals.map((proposal, index) => (
          <RepairSheet
            key={proposal.id}
            proposal={proposal}
            zone={known.zone}
            today={today}
            isFirst={index === 0}
            pending={accept.isPending && accept.variables.proposalId === proposal.id}
            onAccept={
              mayAccept
                ? () => {
                    accept.mutate({ proposalId: proposal.id, planHash: proposal.planHash });
                  }
                : null
            }
          />
        ))}
        {undecided && may.enterDisturbances(role) ? (
          <div className="row no-print">
            {decisionsOn(known).map(({ decision, label }) => (
              <Button
                key={decision}
                variant="default"
                loading={decide.isPending && decide.variables.decision === decision}
                onClick={() => {
                  decide.mutate({ decision });
                }}
              >
                {label}
              </Button>
            ))}
          </div>
        ) : null}
      </div>
    </div>
  );
}
