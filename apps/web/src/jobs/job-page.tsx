import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { hasStatus } from '../api/errors.js';
import { stepRow, type StepRow } from '../bench/bench-view.js';
import '../bench/bench.css';
import { WorkStep } from '../bench/work-step.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { JobLots } from '../lots/job-lots.js';
import { ScreenHead, Waiting } from '../look/screen.js';
import { zoneOf } from '../tickets/ticket-view.js';
import { jobWords as words, ticketWords } from '../words/tickets.js';
import { useJob } from './use-job.js';

/** One job, where its ticket's code leads: what it waits for, and what may be done with it, roomy for a telephone. */
export function JobPage() {
  const { stepId } = useParams({ from: '/inside/bench/jobs/$stepId' });
  const { role } = useSession();
  const { practice, job } = useJob(stepId);
  const [said, setSaid] = useState('');
  if (!job.data) {
    if (hasStatus(job.error, 404)) return <Gone />;
    return <NotYet asked={job} what={words.loading} />;
  }
  const { today, laboratories } = practice;
  const zone = zoneOf(laboratories, job.data);
  const row = stepRow(job.data, { on: today, zone }, today);
  return (
    <>
      <ScreenHead title={words.title(row.caseNumber, row.title)} sentence={words.sentence}>
        <Link to="/bench">{words.toBench}</Link>
        <Link to="/bench/cases/$caseId" params={{ caseId: row.caseId }}>
          {words.wholeCase}
        </Link>
      </ScreenHead>
      <div className="stack roomy">
        <p role="status" className={said ? 'notice notice-go' : 'unseen'}>
          {said}
        </p>
        <Refusal error={job.error} onRetry={() => void job.refetch()} />
        <Waiting busy={job.isPlaceholderData}>
          <ul className="sheet lines">
            <WorkStep row={row} mayAct={may.workAtBench(role)} today={today} onDone={setSaid} />
          </ul>
        </Waiting>
        <JobLots
          stepId={stepId}
          caseId={row.caseId}
          zone={zone}
          today={today}
          mayNote={may.workAtBench(role) && hasBegun(row)}
        />
      </div>
    </>
  );
}

const hasBegun = ({ state }: StepRow): boolean => state === 'started' || state === 'paused' || state === 'finished';

/** The ticket is older than the plan. */
function Gone() {
  return (
    <>
      <ScreenHead title={ticketWords.title} />
      <div className="stack">
        <Notice tone="caution">{words.gone}</Notice>
        <p>
          <Link to="/bench/find" search={{}}>
            {words.find}
          </Link>
        </p>
      </div>
    </>
  );
}
