import type { PatientView } from '@archwright/contracts';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { hasStatus } from '../api/errors.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Conflict, Notice, Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { birthDate } from '../time/wording.js';
import { caseWords } from '../words/case.js';
import { patientWords } from '../words/desk.js';
import { PatientEditor } from './patient-editor.js';
import { draftOfPatient } from './patient-form-view.js';
import { usePatient } from './use-patient.js';

function Cases({ patient, mayOpen }: { patient: PatientView; mayOpen: boolean }) {
  return (
    <aside className="stack-tight">
      <h2>{patientWords.cases}</h2>
      <ul className="sheet lines">
        {patient.cases.length === 0 ? (
          <li>
            <Empty>{patientWords.noCases}</Empty>
          </li>
        ) : null}
        {patient.cases.map((item) => (
          <li key={item.id} className="line">
            <Link to="/desk/cases/$caseId" params={{ caseId: item.id }}>
              {item.number}
            </Link>
            <div>{item.title}</div>
            <div className="small soft">{caseWords.stateOf(item.state)}</div>
          </li>
        ))}
      </ul>
      {mayOpen ? (
        <Link to="/desk/cases/new" search={{ patient: patient.id }}>
          {patientWords.openCase}
        </Link>
      ) : null}
    </aside>
  );
}

/** One patient: what is known, changed in place, and their cases beside it. */
export function PatientPage() {
  const { patientId } = useParams({ from: '/inside/desk/patients/$patientId' });
  const { role } = useSession();
  const { practice, patient, save } = usePatient(patientId);
  const [typed, setTyped] = useState<ReturnType<typeof draftOfPatient> | null>(null);
  if (!patient.data) {
    return patient.error ? (
      <Refusal error={patient.error} onRetry={() => void patient.refetch()} />
    ) : (
      <FirstWait what={patientWords.loading} />
    );
  }
  const known = patient.data;
  const stale = hasStatus(save.error, 412);
  async function reload(keep: boolean): Promise<void> {
    await patient.refetch();
    if (!keep) setTyped(null);
    save.reset();
  }
  return (
    <>
      <ScreenHead
        title={`${known.givenName} ${known.familyName}`}
        sentence={patientWords.editSentence(birthDate(known.birthOn))}
      />
      <div className="beside">
        <div className="stack">
          {stale ? <Conflict onKeepMine={() => void reload(true)} onTakeTheirs={() => void reload(false)} /> : null}
          {save.isSuccess && typed === null ? <Notice tone="go">{patientWords.saved}</Notice> : null}
          {may.keepPatients(role) ? (
            <PatientEditor
              draft={typed ?? draftOfPatient(known)}
              practice={practice}
              submitLabel={patientWords.save}
              pending={save.isPending}
              error={stale ? null : save.error}
              onChange={setTyped}
              onSubmit={(body) => {
                save.mutate(
                  { body, version: known.version },
                  {
                    onSuccess: () => {
                      setTyped(null);
                    },
                  },
                );
              }}
            />
          ) : null}
        </div>
        <Cases patient={known} mayOpen={may.openCases(role)} />
      </div>
    </>
  );
}
