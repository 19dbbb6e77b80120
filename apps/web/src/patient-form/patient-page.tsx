import type { PatientView } from '@archwright/contracts';
import { Link, useParams } from '@tanstack/react-router';
import { hasStatus } from '../api/errors.js';
import { useLiveDraft } from '../drafts/use-live-draft.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { ClashSheet } from '../look/clash-sheet.js';
import { NotYet } from '../look/not-yet.js';
import { Notice } from '../look/notice.js';
import { Empty, ScreenHead } from '../look/screen.js';
import { birthDate } from '../time/wording.js';
import { caseWords } from '../words/case.js';
import { patientWords as words } from '../words/desk.js';
import { enumerated } from '../words/plural.js';
import { PatientEditor } from './patient-editor.js';
import { labelsOf, patientClashes } from './patient-clash.js';
import { draftOfPatient, readPatientDraft } from './patient-form-view.js';
import { usePatient } from './use-patient.js';

type Used = ReturnType<typeof usePatient>;

function Cases({ patient, mayOpen }: { patient: PatientView; mayOpen: boolean }) {
  return (
    <aside className="stack-tight">
      <h2>{words.cases}</h2>
      <ul className="sheet lines">
        {patient.cases.length === 0 ? (
          <li>
            <Empty>{words.noCases}</Empty>
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
          {words.openCase}
        </Link>
      ) : null}
    </aside>
  );
}

/** What is known of a patient, changed in place, also while somebody else changes it. */
function Known({ patient, practice, save }: { patient: PatientView } & Pick<Used, 'practice' | 'save'>) {
  const form = useLiveDraft(`patient.${patient.id}`, draftOfPatient(patient), readPatientDraft);
  const stale = hasStatus(save.error, 412);
  const taken = labelsOf(form.takenOver);
  return (
    <div className="stack">
      <ClashSheet rows={patientClashes(form.clashes)} onKeepMine={form.keepMine} onTakeTheirs={form.takeTheirs} />
      {stale && form.clashes.length === 0 ? <Notice tone="caution">{words.saveAgain}</Notice> : null}
      {taken.length > 0 ? <Notice tone="plain">{words.takenOver(enumerated(taken))}</Notice> : null}
      {save.isSuccess && !form.isTyped ? <Notice tone="go">{words.saved}</Notice> : null}
      <PatientEditor
        draft={form.draft}
        practice={practice}
        submitLabel={words.save}
        pending={save.isPending}
        error={stale ? null : save.error}
        onDrop={form.isTyped ? form.forget : undefined}
        onChange={form.change}
        onSubmit={(body) => {
          if (form.clashes.length > 0) return;
          const settle = form.hold();
          const onSuccess = (saved: PatientView) => {
            settle(draftOfPatient(saved));
          };
          save.mutate({ body, version: patient.version }, { onSuccess });
        }}
      />
    </div>
  );
}

/** One patient: what is known, changed in place, and their cases beside it. */
export function PatientPage() {
  const { patientId } = useParams({ from: '/inside/desk/patients/$patientId' });
  const { role } = useSession();
  const { practice, patient, save } = usePatient(patientId);
  if (!patient.data) {
    return <NotYet asked={patient} what={words.loading} />;
  }
  const known = patient.data;
  return (
    <>
      <ScreenHead
        title={`${known.givenName} ${known.familyName}`}
        sentence={words.editSentence(birthDate(known.birthOn))}
      />
      <div className="beside">
        {may.keepPatients(role) ? (
          <Known key={known.id} patient={known} practice={practice} save={save} />
        ) : (
          <div className="stack" />
        )}
        <Cases patient={known} mayOpen={may.openCases(role)} />
      </div>
    </>
  );
}
