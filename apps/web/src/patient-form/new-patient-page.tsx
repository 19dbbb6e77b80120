import { patientView, type CreatePatient } from '@archwright/contracts';
import { useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { post } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { ScreenHead } from '../look/screen.js';
import { practiceZone } from '../time/practice-zone.js';
import { patientWords } from '../words/desk.js';
import { PatientEditor } from './patient-editor.js';
import { emptyPatient } from './patient-form-view.js';

/** A new patient, from one form. */
export function NewPatientPage() {
  const practice = useSuspenseQuery(practiceQuery).data;
  const navigate = useNavigate();
  const client = useQueryClient();
  const [draft, setDraft] = useState(() => emptyPatient(practiceZone(practice)));
  const add = useMutation({
    mutationFn: (body: CreatePatient) => post('/patients', patientView, body),
    onSuccess: async (patient) => {
      client.setQueryData(['patient', patient.id], patient);
      await navigate({ to: '/desk/patients/$patientId', params: { patientId: patient.id } });
    },
  });
  return (
    <>
      <ScreenHead title={patientWords.newTitle} sentence={patientWords.newSentence} />
      <PatientEditor
        draft={draft}
        practice={practice}
        submitLabel={patientWords.add}
        pending={add.isPending}
        error={add.error}
        onChange={setDraft}
        onSubmit={(body) => {
          add.mutate(body);
        }}
      />
    </>
  );
}
