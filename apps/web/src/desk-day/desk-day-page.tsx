import { Link, useSearch } from '@tanstack/react-router';
import { useMemo } from 'react';
import { CallSummary } from '../call-list/call-summary.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { useNow } from '../look/clock.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { practiceZone } from '../time/practice-zone.js';
import { dateAndTime, longDate } from '../time/wording.js';
import { viewerZone } from '../time/zone.js';
import { deskWords } from '../words/desk.js';
import { toldWords } from '../words/told.js';
import { DayChoices } from './day-choices.js';
import { groupingOf } from './day-groups.js';
import { DayTable } from './day-table.js';
import './desk-day.css';
import { shapeDay } from './desk-day-view.js';
import { DeskPlaces } from './desk-places.js';
import { useDeskDay } from './use-desk-day.js';

/** How soon a visit that has begun can be marked as missed, and is said to be late. */
const NOW_EVERY_MS = 15_000;

/** The day by clinic, chair or clinician, and beside it the calls that have to be made. */
export function DeskDayPage() {
  const search = useSearch({ from: '/inside/desk' });
  const { role } = useSession();
  const now = useNow(NOW_EVERY_MS);
  const { practice, day, board, act } = useDeskDay(search.on, search.clinic);
  const by = groupingOf(search.by);
  // The day stays as it is drawn while another is fetched.
  const parts = useMemo(() => (board.data ? shapeDay(board.data, by, viewerZone(), now) : []), [board.data, by, now]);
  const asOf = dateAndTime(new Date(now).toISOString(), practiceZone(practice), practice.today);

  return (
    <>
      <ScreenHead title={longDate(day, practice.today)} sentence={board.data && toldWords(board.data.told)}>
        <DayChoices practice={practice} day={day} />
      </ScreenHead>
      <p className="print-only">{deskWords.sheetNote(asOf)}</p>
      <div className="stack">
        <DeskPlaces />
        <Refusal error={board.error ?? act.error} onRetry={() => void board.refetch()} />
        <div className={may.seeCalls(role) ? 'beside' : undefined}>
          <Waiting busy={board.isPlaceholderData}>
            <div className="stack">
              {board.isPending ? <FirstWait what={deskWords.loading} /> : null}
              {board.data && parts.length === 0 ? (
                <div className="sheet">
                  <Empty>
                    <p>{deskWords.emptyDay}</p>
                    {may.openCases(role) ? <Link to="/desk/cases/new">{deskWords.subPlaces.newCase}</Link> : null}
                  </Empty>
                </div>
              ) : null}
              {parts.map((part) => (
                <DayTable
                  key={part.key}
                  part={part}
                  mayAct={may.actOnVisits(role)}
                  mayChange={may.keepDesk(role)}
                  showsClinic={by === 'clinician'}
                  pendingId={act.isPending ? act.variables.id : null}
                  onAct={act.mutate}
                />
              ))}
            </div>
          </Waiting>
          {may.seeCalls(role) ? <CallSummary /> : null}
        </div>
      </div>
    </>
  );
}
