import { Link, useSearch } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Refusal } from '../look/notice.js';
import { Empty, ScreenHead, Waiting } from '../look/screen.js';
import { birthDate, longDate } from '../time/wording.js';
import { findWords } from '../words/frame.js';
import { isDayOfPractice } from './find-view.js';
import { useFind } from './use-find.js';

/** Everything that fits what was typed: a day, patients, cases. */
export function FindPage() {
  const { q = '' } = useSearch({ from: '/inside/find' });
  const session = useSession();
  const found = useFind(q, may.seeVisits(session.role));
  const day = found.day !== null && isDayOfPractice(found.day, found.today) ? found.day : null;
  const nothing = found.asked && !found.busy && !day && found.patients.length + found.cases.length === 0;
  return (
    <>
      <ScreenHead title={findWords.title} sentence={q ? findWords.results(q) : findWords.start} />
      <Refusal error={found.error} />
      <Waiting busy={found.busy}>
        <div className="stack column" aria-live="polite">
          {day ? (
            <p className="sheet sheet-pad">
              <Link to="/desk" search={{ on: day }}>
                {findWords.goToDay(longDate(day, found.today))}
              </Link>
            </p>
          ) : null}
          {found.patients.length > 0 ? (
            <section className="stack-tight">
              <h2>{findWords.patients}</h2>
              <ul className="sheet lines">
                {found.patients.map((patient) => (
                  <li key={patient.id} className="line row">
                    <Link to="/desk/patients/$patientId" params={{ patientId: patient.id }}>
                      {patient.familyName}, {patient.givenName}
                    </Link>
                    <span className="soft">
                      · {findWords.born} {birthDate(patient.birthOn)}
                    </span>
                    {may.openCases(session.role) ? (
                      <Link
                        to="/desk/cases/new"
                        search={{ patient: patient.id }}
                        className="push"
                        aria-label={findWords.openCaseFor(`${patient.givenName} ${patient.familyName}`)}
                      >
                        {findWords.openCase}
                      </Link>
                    ) : null}
                  </li>
                ))}
              </ul>
            </section>
          ) : null}
          {found.cases.length > 0 ? (
            <section className="stack-tight">
              <h2>{findWords.cases}</h2>
              <ul className="sheet lines">
                {found.cases.map((item) => (
                  <li key={item.id} className="line">
                    <Link to="/desk/cases/$caseId" params={{ caseId: item.id }}>
                      {item.number}
                    </Link>
                    <span className="soft">
                      {' '}
                      · {item.patient.name} · {item.title}
                    </span>
                  </li>
                ))}
              </ul>
            </section>
          ) : null}
          {nothing ? (
            <Empty>
              <p>{findWords.nothing(q)}</p>
              {may.keepPatients(session.role) ? (
                <Link to="/desk/patients/new" search={day === null ? { name: q } : {}}>
                  {findWords.addPatient}
                </Link>
              ) : null}
            </Empty>
          ) : null}
        </div>
      </Waiting>
    </>
  );
}
