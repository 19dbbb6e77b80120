import { useSuspenseQuery } from '@tanstack/react-query';
import { practiceQuery } from '../api/queries.js';
import { useSession } from '../frame/use-session.js';
import { OpenQuestionList } from '../lab-questions/open-question-list.js';
import { Refusal } from '../look/notice.js';
import { FirstWait, ScreenHead } from '../look/screen.js';
import { FindingsList } from '../screening/findings-list.js';
import { practiceZone } from '../time/practice-zone.js';
import { practiceWords as words } from '../words/practice.js';
import { AlertList } from './alert-list.js';
import { PracticeFacts } from './practice-facts.js';
import { PracticePlaces } from './practice-places.js';
import { waitingSentence } from './practice-view.js';
import { useWaiting } from './use-waiting.js';

/** What the practice consists of, and what in it waits for a person. */
export function PracticePage() {
  const { organisationName } = useSession();
  const practice = useSuspenseQuery(practiceQuery).data;
  const zone = practiceZone(practice);
  const { alerts, rows, isPending, count } = useWaiting(zone, practice.today);
  return (
    <>
      <ScreenHead title={organisationName} sentence={waitingSentence(practice, count)} />
      <div className="stack">
        <PracticePlaces />
        {isPending ? (
          <FirstWait what={words.loading} />
        ) : (
          <>
            <Refusal error={alerts.error} onRetry={() => void alerts.refetch()} />
            <AlertList rows={rows} />
            <OpenQuestionList today={practice.today} />
            <FindingsList zone={zone} today={practice.today} />
            <PracticeFacts practice={practice} />
          </>
        )}
      </div>
    </>
  );
}
