import { patientPage, type PatientPage } from '@archwright/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { askForLikeness, likelySame, type Likeness } from './likely-same.js';
import type { PatientDraft } from './patient-form-view.js';

/** Who of those already entered may be the person that is being typed. */
export function useLikeness(draft: PatientDraft): Likeness[] {
  const asked = askForLikeness(draft);
  const found = useQuery({
    queryKey: ['patients', asked],
    queryFn: (): Promise<PatientPage> => read('/patients', patientPage, { ...asked, limit: 50 }),
    enabled: asked !== null,
  });
  return asked === null ? [] : likelySame(draft, found.data?.items ?? []);
}
