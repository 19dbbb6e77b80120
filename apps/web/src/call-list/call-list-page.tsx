import { DeskPlaces } from '../desk-day/desk-places.js';
import { ScreenHead, Waiting } from '../look/screen.js';
import { deskWords } from '../words/desk.js';
import { toldWords } from '../words/told.js';
import { CallCards } from './call-cards.js';
import { useCalls } from './use-calls.js';

/** Every call to make, and how each went. */
export function CallListPage() {
  const calls = useCalls();
  return (
    <>
      <ScreenHead title={deskWords.callsTitle} sentence={calls.list.data && toldWords(calls.list.data.told)} />
      <div className="stack">
        <DeskPlaces />
        <Waiting busy={calls.list.isPlaceholderData}>
          <div className="stack column">
            <CallCards calls={calls} rows={calls.rows} />
          </div>
        </Waiting>
      </div>
    </>
  );
}
