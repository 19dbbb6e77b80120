import {
  openCase,
  setVisitPlace,
  type Arch,
  type OpenCase,
  type PatientView,
  type PracticeView,
} from '@archwright/contracts';
import { z } from 'zod';
import { openCaseWords } from '../words/case.js';
import { wishesDraft, wishesOfDraft, type WishesDraft } from '../wishes/wishes-view.js';

export interface CaseDraft {
  patientId: string | null;
  enquiry: boolean;
  paths: Record<Arch, string>;
  /** Of the patient's cases the one whose denture is repaired, relined or replaced; empty for none. */
  parentCaseId: string;
  clinicIds: string[];
  clinicianId: string;
  place: OpenCase['visitPlace']['place'];
  /** The clinician's way to a patient at home, as typed. */
  travelMinutes: string;
  /** Null until changed: the patient's own wishes count. */
  wishes: WishesDraft | null;
}

/** What is typed; the patient stands in the address. */
export type TypedCase = Omit<CaseDraft, 'patientId'>;

export const emptyCase = (practice: PracticeView, enquiry: boolean): TypedCase => ({
  enquiry,
  paths: { upper: '', lower: '' },
  parentCaseId: '',
  clinicIds: practice.clinics.map((clinic) => clinic.id),
  clinicianId: '',
  place: 'clinic',
  travelMinutes: '25',
  wishes: null,
});

export const typedCase = z.object({
  enquiry: z.boolean(),
  paths: z.object({ upper: z.string(), lower: z.string() }),
  parentCaseId: z.string(),
  clinicIds: z.array(z.string()),
  clinicianId: z.string(),
  place: z.enum(['clinic', 'home', 'care-home']),
  travelMinutes: z.string(),
  wishes: wishesDraft.nullable(),
});

/**
 * Under which what is typed is kept: never shown for another patient than the one it was typed for.
 *
 * @param as what is opened, as the address has it
 * @param patientId null while nobody is chosen
 */
export const caseDraftKey = (as: string | undefined, patientId: string | null): string =>
  `case.new.${as === 'enquiry' ? as : 'case'}.${patientId ?? 'nobody'}`;

/** A draft that the browser kept over a reload; null when it is none. */
export const readTypedCase = (kept: unknown): TypedCase | null => typedCase.safeParse(kept).data ?? null;

/** Paths that may be chosen for one arch, newest version first among equals. */
export function pathsFor(practice: PracticeView, arch: Arch): { value: string; label: string }[] {
  return practice.paths
    .filter((path) => path.arches.includes(arch))
    .sort((a, b) => a.title.localeCompare(b.title) || b.version - a.version)
    .map((path) => ({ value: path.versionId, label: openCaseWords.path(path.title, path.visits, path.version) }));
}

/** Both arches are usually treated alike: as long as the lower one follows the upper one, one choice is enough. */
export function choosePath(
  practice: PracticeView,
  paths: CaseDraft['paths'],
  arch: Arch,
  value: string,
): CaseDraft['paths'] {
  if (arch === 'lower') return { ...paths, lower: value };
  const fitsLower =
    value === '' || practice.paths.some((path) => path.versionId === value && path.arches.includes('lower'));
  const follows = paths.lower === paths.upper;
  return { upper: value, lower: follows && fitsLower ? value : paths.lower };
}

/** Of an enquiry nothing is decided; the examination of a path for both arches is booked until the clinician decides. */
function provisionalArches(practice: PracticeView): OpenCase['arches'] {
  const [path] = practice.paths
    .filter(({ arches }) => arches.length === 2)
    .sort((a, b) => Number(b.code === USUAL) - Number(a.code === USUAL) || b.version - a.version);
  return path ? path.arches.map((arch) => ({ arch, pathVersionId: path.versionId })) : [];
}

const USUAL = 'conventional';

/** Clinicians of the chosen clinics, each once. */
export function cliniciansOf(practice: PracticeView, clinicIds: readonly string[]): { value: string; label: string }[] {
  const found = new Map<string, string>();
  for (const clinic of practice.clinics) {
    if (clinicIds.includes(clinic.id)) for (const { id, name } of clinic.clinicians) found.set(id, name);
  }
  return [...found].map(([value, label]) => ({ value, label })).sort((a, b) => a.label.localeCompare(b.label));
}

/** Other clinics; a clinician who works in none of them is not meant any more. */
export function chooseClinics(practice: PracticeView, typed: TypedCase, clinicIds: string[]): TypedCase {
  const worksThere = cliniciansOf(practice, clinicIds).some(({ value }) => value === typed.clinicianId);
  return { ...typed, clinicIds, clinicianId: worksThere ? typed.clinicianId : '' };
}

/** What would be sent, or what is still missing, by the part of the form where it is missing. */
export function readCase(
  practice: PracticeView,
  draft: CaseDraft,
): { body: OpenCase } | { errors: Record<string, string> } {
  const errors: Record<string, string> = {};
  const arches = draft.enquiry ? provisionalArches(practice) : archesOf(draft.paths);
  if (draft.patientId === null) errors['patientId'] = openCaseWords.needPatient;
  if (arches.length === 0) errors['arches'] = draft.enquiry ? openCaseWords.needPaths : openCaseWords.needArch;
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
    parentCaseId: draft.parentCaseId || null,
    visitPlace: visitPlace.data,
    ...(draft.wishes ? { wishes: wishesOfDraft(draft.wishes) } : {}),
  });
  return { body };
}

/** Cases of the patient that may have placed a denture, to choose the one that this case follows. */
export const parentChoices = (cases: PatientView['cases']): { value: string; label: string }[] =>
  cases
    .filter(({ state }) => state !== 'enquiry')
    .map(({ id, number, title }) => ({ value: id, label: openCaseWords.parentCase(number, title) }));

/** The arches that have a path, as they are sent. */
export const archesOf = (paths: CaseDraft['paths']): OpenCase['arches'] =>
  (['upper', 'lower'] as const).flatMap((arch) => (paths[arch] ? [{ arch, pathVersionId: paths[arch] }] : []));

function placeOf({ place, travelMinutes }: TypedCase) {
  if (place === 'clinic') return setVisitPlace.safeParse({ place });
  const minutes = travelMinutes.trim() === '' ? NaN : Number(travelMinutes);
  return setVisitPlace.safeParse({ place, travelMinutes: minutes });
}
