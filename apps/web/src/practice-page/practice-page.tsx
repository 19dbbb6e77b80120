import { useSuspenseQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { openAlerts, useAlerts } from '../alerts/open-alerts.js';
import { practiceQuery } from '../api/queries.js';
import { useSession } from '../frame/use-session.js';
import { OpenQuestionList } from '../lab-questions/open-question-list.js';
import { useOpenQuestions } from '../lab-questions/use-open-questions.js';
import { Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { FindingsList } from '../screening/findings-list.js';
import { practiceZone } from '../time/practice-zone.js';
import { practiceWords as words } from '../words/practice.js';
import { AlertList } from './alert-list.js';
import { FactsTable } from './facts-table.js';
import { PracticePlaces } from './practice-places.js';
import { clinicRows, laboratoryRows, pathRows, practiceSentence } from './practice-view.js';

/** What the practice consists of, and what in it waits for a person. */
export function PracticePage() {
  const { organisationName } = useSession();
  const practice = useSuspenseQuery(practiceQuery).data;
  const alerts = useAlerts();
  const rows = openAlerts(alerts.data?.items ?? [], practiceZone(practice), practice.today);
  const questions = useOpenQuestions().data?.items ?? [];
  const { clinicColumns, laboratoryColumns, pathColumns } = words;
  return (
    <>
      <ScreenHead
        title={organisationName}
        sentence={`${words.waiting(rows.length + questions.length)} ${practiceSentence(practice)}`}
      />
      <div className="stack">
        <PracticePlaces />
        <Refusal error={alerts.error} onRetry={() => void alerts.refetch()} />
        <AlertList rows={rows} />
        <OpenQuestionList today={practice.today} />
        <FindingsList zone={practiceZone(practice)} today={practice.today} />
        <FactsTable
          title={words.clinicsTitle}
          columns={Object.values(clinicColumns)}
          rows={clinicRows(practice).map(({ id, name, zone, chairs, clinicians }) => ({
            id,
            head: (
              <Link to="/desk" search={{ clinic: id }} aria-label={words.seeDay(name)}>
                {name}
              </Link>
            ),
            cells: [
              zone,
              chairs,
              <ul key="clinicians">
                {clinicians.map((one) => (
                  <li key={one}>{one}</li>
                ))}
              </ul>,
            ],
          }))}
        />
        <FactsTable
          title={words.laboratoriesTitle}
          columns={Object.values(laboratoryColumns)}
          rows={laboratoryRows(practice).map(({ id, name, zone, workCentres }) => ({
            id,
            head: (
              <Link to="/bench" search={{ lab: id }} aria-label={words.seeLoad(name)}>
                {name}
              </Link>
            ),
            cells: [zone, workCentres],
          }))}
        />
        <FactsTable
          title={words.pathsTitle}
          columns={Object.values(pathColumns)}
          rows={pathRows(practice).map(({ id, title, arches, visits, version }) => ({
            id,
            head: title,
            cells: [arches, visits, version],
          }))}
        />
      </div>
    </>
  );
}
