import { Button } from '@mantine/core';
import { appointmentView, type AppointmentView, type EnterDisturbance } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState, type SyntheticEvent } from 'react';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { useNow } from '../look/clock.js';
import { useFirstProblem } from '../look/first-problem.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { WhenAndWhy } from '../look/when-and-why.js';
import { dateAndTime } from '../time/wording.js';
import { deskWords } from '../words/desk.js';
import { lostVisitWords as words } from '../words/lost.js';
import { canFallAway, lostVisitBody, lostVisitDraft } from './lost-visit-view.js';
import { useEnter } from './use-enter.js';

/** A visit that was missed or will not take place: from when the patient can come again. Plans follow on the next screen. */
export function LostVisitPage() {
  const { appointmentId } = useParams({ from: '/inside/desk/falls-away/visits/$appointmentId' });
  const { today } = useSuspenseQuery(practiceQuery).data;
  const visit = useQuery({
    queryKey: ['appointment', appointmentId],
    queryFn: () => read(`/appointments/${appointmentId}`, appointmentView),
  });
  const enter = useEnter();
  if (!visit.data) {
    return <NotYet asked={visit} what={words.loading} />;
  }
  const { title, patientName, startsAt, zone, state, caseId } = visit.data;
  return (
    <>
      <ScreenHead
        title={words.title(title)}
        sentence={words.sentence(patientName, dateAndTime(startsAt, zone, today), deskWords.state[state])}
      >
        {caseId === null ? null : (
          <Link to="/desk/cases/$caseId" params={{ caseId }}>
            {words.back}
          </Link>
        )}
      </ScreenHead>
      <div className="stack column">
        <Refusal error={enter.error} />
        {canFallAway(visit.data) ? (
          <LostVisitForm visit={visit.data} today={today} pending={enter.isPending} onEnter={enter.mutate} />
        ) : (
          <Notice tone="caution">{words.over(deskWords.state[state])}</Notice>
        )}
      </div>
    </>
  );
}

interface FormProps {
  visit: AppointmentView;
  today: string;
  pending: boolean;
  onEnter: (body: EnterDisturbance) => void;
}

function LostVisitForm({ visit, today, pending, onEnter }: FormProps) {
  const [draft, setDraft] = useState(() => lostVisitDraft(visit, today));
  const [attempt, setAttempt] = useState(0);
  const now = useNow(60_000);
  const body = lostVisitBody(draft, visit, now);
  const isWrong = attempt > 0 && body === null;
  const form = useFirstProblem(attempt, isWrong);

  function send(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (body !== null) onEnter(body);
  }

  return (
    <form ref={form} className="sheet sheet-pad stack" onSubmit={send} noValidate>
      <p>{words.explain}</p>
      <WhenAndWhy draft={draft} words={words} from={today} isWrong={isWrong} step={300} onChange={setDraft} />
      <div>
        <Button type="submit" loading={pending}>
          {words.go}
        </Button>
      </div>
    </form>
  );
}
