import { openCase, setVisitPlace, type Arch, type OpenCase, type PracticeView } from '@archwright/contracts';
import { openCaseWords } from '../words/case.js';
import { wishesOfDraft, type WishesDraft } from '../wishes/wishes-view.js';

export interface CaseDraft {
  patientId: string | null;
  enquiry: boolean;
  paths: Record<Arch, string>;
  clinicIds: string[];
  clinicianId: string;
  place: OpenCase['visitPlace']['place'];
  /** The clinician's way to a patient at home, as typed. */
  travelMinutes: string;
  /** Null until changed: the patient's own wishes count. */
  wishes: WishesDraft | null;
}

export const emptyCase = (practice: PracticeView): CaseDraft => ({
  patientId: null,
  enquiry: false,
  paths: { upper: '', lower: '' },
  clinicIds: practice.clinics.map((clinic) => clinic.id),
  clinicianId: '',
  place: 'clinic',
  travelMinutes: '25',
  wishes: null,
});

/** Paths that may be chosen for one arch, newest version first among equals. */
export function pathsFor(practice: PracticeView, arch: Arch): { value: string; label: string }[] {
  return practice.paths
    .filter((path) => path.arches.includes(arch))
    .sort((a, b) => a.title.localeCompare(b.title) || b.version - a.version)
    .map((path) => ({ value: path.versionId, label: openCaseWords.path(path.title, path.visits, path.version) }));
}

/** Clinicians of the chosen clinics, each once. */
export function cliniciansOf(practice: PracticeView, clinicIds: readonly string[]): { value: string; label: string }[] {
  const found = new Map<string, string>();
  for (const clinic of practice.clinics) {
    if (clinicIds.includes(clinic.id)) for (const { id, name } of clinic.clinicians) found.set(id, name);
  }
  return [...found].map(([value, label]) => ({ value, label })).sort((a, b) => a.label.localeCompare(b.label));
}

/** What would be sent, or what is still missing, by the part of the form where it is missing. */
export function readCase(draft: CaseDraft): { body: OpenCase } | { errors: Record<string, string> } {
  const errors: Record<string, string> = {};
  const arches = (['upper', 'lower'] as const).flatMap((arch) =>
    draft.paths[arch] ? [{ arch, pathVersionId: draft.paths[arch] }] : [],
  );
  if (draft.patientId === null) errors['patientId'] = openCaseWords.needPatient;
  if (arches.length === 0) errors['arches'] = openCaseWords.needArch;
  if (draft.clinicIds.length === 0) errors['clinicIds'] = openCaseWords.needClinic;
  const visitPlace = placeOf(draft);
  if (!visitPlace.success) errors['visitPlace.travelMinutes'] = openCaseWords.needTravel;
  if (!visitPlace.success || Object.keys(errors).length > 0) return { errors };
  const body = openCase.parse({
    patientId: draft.patientId,
    enquiry: draft.enquiry,
    arches,
    clinicIds: draft.clinicIds,
    clinicianId: draft.clinicianId || null,
    visitPlace: visitPlace.data,
    ...(draft.wishes ? { wishes: wishesOfDraft(draft.wishes) } : {}),
  });
  return { body };
}

function placeOf({ place, travelMinutes }: CaseDraft) {
  if (place === 'clinic') return setVisitPlace.safeParse({ place });
  const minutes = travelMinutes.trim() === '' ? NaN : Number(travelMinutes);
  return setVisitPlace.safeParse({ place, travelMinutes: minutes });
}
