import { NativeSelect } from '@mantine/core';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { CallSummary } from '../call-list/call-summary.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { useNow } from '../look/clock.js';
import { DayPicker } from '../look/day-picker.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { longDate } from '../time/wording.js';
import { viewerZone } from '../time/zone.js';
import { deskWords } from '../words/desk.js';
import './desk-day.css';
import { shapeDay } from './desk-day-view.js';
import { DeskPlaces } from './desk-places.js';
import { useDeskDay } from './use-desk-day.js';
import { VisitRow } from './visit-row.js';

/** How soon a visit that has begun can be marked as missed. */
const NOW_EVERY_MS = 15_000;

/** The day by clinic, and beside it the calls that have to be made. */
export function DeskDayPage() {
  const search = useSearch({ from: '/inside/desk' });
  const navigate = useNavigate();
  const { role } = useSession();
  const now = useNow(NOW_EVERY_MS);
  const { practice, day, board, act } = useDeskDay(search.on, search.clinic);
  const clinics = board.data ? shapeDay(board.data, viewerZone(), now) : [];
  const columns = deskWords.columns;

  return (
    <>
      <ScreenHead title={longDate(day, practice.today)} sentence={board.data?.sentence}>
        <NativeSelect
          aria-label={deskWords.clinic}
          value={search.clinic ?? ''}
          data={[
            { value: '', label: deskWords.allClinics },
            ...practice.clinics.map((clinic) => ({ value: clinic.id, label: clinic.name })),
          ]}
          onChange={(event) => {
            const clinic = event.currentTarget.value;
            void navigate({
              to: '/desk',
              search: { ...(search.on ? { on: search.on } : {}), ...(clinic ? { clinic } : {}) },
            });
          }}
        />
        <DayPicker
          day={day}
          today={practice.today}
          onPick={(on) => void navigate({ to: '/desk', search: { ...search, on } })}
        />
      </ScreenHead>
      <div className="stack">
        <DeskPlaces />
        <Refusal error={board.error ?? act.error} onRetry={() => void board.refetch()} />
        <div className={may.seeCalls(role) ? 'beside' : undefined}>
          <Waiting busy={board.isPlaceholderData}>
            <div className="stack">
              {board.isPending ? <FirstWait what={deskWords.loading} /> : null}
              {board.data && clinics.length === 0 ? (
                <div className="sheet">
                  <Empty>
                    <p>{deskWords.emptyDay}</p>
                    {may.openCases(role) ? <Link to="/desk/cases/new">{deskWords.subPlaces.newCase}</Link> : null}
                  </Empty>
                </div>
              ) : null}
              {clinics.map((clinic) => (
                <section key={clinic.clinicId} className="stack-tight">
                  <div className="row">
                    <h2 id={`clinic-${clinic.clinicId}`}>{clinic.clinicName}</h2>
                    <span className="soft small">{deskWords.visits(clinic.rows.length)}</span>
                  </div>
                  <div
                    className="sheet scroll-x"
                    tabIndex={0}
                    role="group"
                    aria-labelledby={`clinic-${clinic.clinicId}`}
                  >
                    <table className="table day-table">
                      <thead>
                        <tr>
                          <th scope="col">{columns.time}</th>
                          <th scope="col">{columns.patient}</th>
                          <th scope="col">{columns.visit}</th>
                          <th scope="col">{columns.with}</th>
                          <th scope="col">{columns.state}</th>
                          <th scope="col" className="no-print">
                            {columns.act}
                          </th>
                        </tr>
                      </thead>
                      <tbody>
                        {clinic.rows.map((row) => (
                          <VisitRow
                            key={row.id}
                            row={row}
                            mayAct={may.actOnVisits(role)}
                            mayChange={may.keepDesk(role)}
                            pending={act.isPending && act.variables.id === row.id}
                            onAct={(action) => {
                              act.mutate({ id: row.id, version: row.version, action });
                            }}
                          />
                        ))}
                      </tbody>
                    </table>
                  </div>
                </section>
              ))}
            </div>
          </Waiting>
          {may.seeCalls(role) ? <CallSummary /> : null}
        </div>
      </div>
    </>
  );
}
