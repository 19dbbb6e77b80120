import { patientView, type CreatePatient } from '@archwright/contracts';
import { useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { post } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { moveDraft } from '../drafts/kept-drafts.js';
import { useKeptDraft } from '../drafts/use-kept-draft.js';
import { ScreenHead } from '../look/screen.js';
import { caseDraftKey } from '../open-case/open-case-view.js';
import { practiceZone } from '../time/practice-zone.js';
import { patientWords } from '../words/desk.js';
import { LikelyList } from './likely-list.js';
import { PatientEditor } from './patient-editor.js';
import { emptyPatient, readPatientDraft } from './patient-form-view.js';
import { useLikeness } from './use-likeness.js';

/** A new patient, from one form; then back to the case or enquiry that wanted one. */
export function NewPatientPage() {
  const practice = useSuspenseQuery(practiceQuery).data;
  const { name = '', then } = useSearch({ from: '/inside/desk/patients/new' });
  const navigate = useNavigate();
  const client = useQueryClient();
  const [draft, change, forget] = useKeptDraft(
    `patient.new.${name}`,
    () => ({ ...emptyPatient(practiceZone(practice)), familyName: name }),
    readPatientDraft,
  );
  const likely = useLikeness(draft);
  const add = useMutation({
    mutationFn: (body: CreatePatient) => post('/patients', patientView, body),
    onSuccess: async ({ id, ...patient }) => {
      forget();
      client.setQueryData(['patient', id], { id, ...patient });
      if (then === undefined) await navigate({ to: '/desk/patients/$patientId', params: { patientId: id } });
      else {
        // The case form was left while nobody could be chosen.
        moveDraft(caseDraftKey(then, null), caseDraftKey(then, id));
        await navigate({ to: '/desk/cases/new', search: { patient: id, ...(then === 'enquiry' ? { as: then } : {}) } });
      }
    },
  });
  return (
    <>
      <ScreenHead title={patientWords.newTitle} sentence={patientWords.newSentence} />
      <div className="stack column">
        <LikelyList likely={likely} />
        <PatientEditor
          draft={draft}
          practice={practice}
          submitLabel={patientWords.add}
          pending={add.isPending}
          error={add.error}
          onChange={change}
          onSubmit={(body) => {
            add.mutate(body);
          }}
        />
      </div>
    </>
  );
}
