import { DeskPlaces } from '../desk-day/desk-places.js';
import { ScreenHead } from '../look/screen.js';
import { beforeVisitsWords as words } from '../words/before-visits.js';
import { ArrivalList } from './arrival-list.js';
import { beforeVisitsSentence } from './before-visits-view.js';
import { RecallList } from './recall-list.js';
import { TransferList } from './transfer-list.js';
import { useBeforeVisits } from './use-before-visits.js';

/** What has to be settled while there is still time: missing work, checks without a visit, cases that go elsewhere. */
export function BeforeVisitsPage() {
  const { arrivals, recalls, transfers } = useBeforeVisits();
  const isKnown = [arrivals, recalls, transfers].every(({ list }) => list.data !== undefined);
  return (
    <>
      <ScreenHead
        title={words.title}
        sentence={
          isKnown ? beforeVisitsSentence(arrivals.rows.length, recalls.rows.length, transfers.rows.length) : undefined
        }
      />
      <div className="stack">
        <DeskPlaces />
        <div className="stack column">
          <ArrivalList {...arrivals} />
          <RecallList {...recalls} />
          <TransferList {...transfers} />
        </div>
      </div>
    </>
  );
}
