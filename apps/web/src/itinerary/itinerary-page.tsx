import { Button } from '@mantine/core';
import { Link, useParams } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Notice, Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { viewerZone } from '../time/zone.js';
import { itineraryWords as words } from '../words/itinerary.js';
import { itineraryRows } from './itinerary-view.js';
import { useItinerary } from './use-itinerary.js';

/** The coming visits of a patient on one sheet: to print, as a calendar file, by mail. */
export function ItineraryPage() {
  const { caseId } = useParams({ from: '/inside/desk/cases/$caseId/itinerary' });
  const { role } = useSession();
  const { practice, view, itinerary, send } = useItinerary(caseId);
  if (!view.data || !itinerary.data) {
    const error = view.error ?? itinerary.error;
    return error ? <Refusal error={error} /> : <FirstWait what={words.loading} />;
  }
  const rows = itineraryRows(itinerary.data, view.data, { today: practice.today, viewer: viewerZone() });
  const { number, patient } = view.data;
  return (
    <>
      <ScreenHead title={words.title(patient.name)} sentence={words.sentence(rows.length, number)}>
        <Link to="/desk/cases/$caseId" params={{ caseId }}>
          {words.back}
        </Link>
        {rows.length > 0 ? (
          <>
            <Button
              onClick={() => {
                window.print();
              }}
            >
              {words.print}
            </Button>
            <Button component="a" variant="default" href={`/api/v1/cases/${caseId}/itinerary/calendar`} download>
              {words.calendar}
            </Button>
            {may.keepDesk(role) ? (
              <Button
                variant="default"
                loading={send.isPending}
                onClick={() => {
                  send.mutate();
                }}
              >
                {words.send[itinerary.data.way]}
              </Button>
            ) : null}
          </>
        ) : null}
      </ScreenHead>
      <div className="stack">
        <Refusal error={send.error} />
        {send.data ? (
          <div className="no-print">
            <Notice tone="go">{words.sent[send.data.way]}</Notice>
          </div>
        ) : null}
        <div className="sheet scroll-x" tabIndex={0} role="group" aria-label={words.title(patient.name)}>
          {rows.length === 0 ? (
            <Empty>{words.none}</Empty>
          ) : (
            <table className="table">
              <thead>
                <tr>
                  <th scope="col">{words.columns.when}</th>
                  <th scope="col">{words.columns.what}</th>
                  <th scope="col">{words.columns.where}</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.key}>
                    <th scope="row">
                      <div className="strong">{row.day}</div>
                      <div>
                        {row.time} {row.zoneNote ? <span className="small soft">{row.zoneNote}</span> : null}
                      </div>
                      {row.isProvisional ? <div className="small">{words.provisional}</div> : null}
                    </th>
                    <td>
                      {row.title}
                      <div className="soft">{row.clinician}</div>
                    </td>
                    <td>
                      {row.clinic}
                      <div>{row.address}</div>
                      <div className="soft">{row.phone}</div>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </div>
      </div>
    </>
  );
}
