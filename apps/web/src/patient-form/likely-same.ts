import type { PatientPage } from '@archwright/contracts';
import { birthDate } from '../time/wording.js';
import { patientWords as words } from '../words/desk.js';
import type { PatientDraft } from './patient-form-view.js';

type Known = PatientPage['items'][number];
type Typed = Pick<PatientDraft, 'givenName' | 'familyName' | 'birthOn'>;

export interface Likeness {
  id: string;
  label: string;
  /** Name and birth date are the same: hardly anybody else. */
  isSame: boolean;
}

/** Letters alone, without case and accents: "Müller-Example" and "muller example" are one name. */
const plain = (name: string): string =>
  name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}]/gu, '');

const begins = (one: string, other: string): boolean =>
  one !== '' && other !== '' && (one.startsWith(other) || other.startsWith(one));

/**
 * Those already entered who may be the person being typed: the birth date fits with one of the names, or both names do.
 * Names may be half typed or swapped.
 */
export function likelySame(typed: Typed, known: readonly Known[]): Likeness[] {
  const [given, family] = [plain(typed.givenName), plain(typed.familyName)];
  return known
    .map((patient) => {
      const names = [plain(patient.givenName), plain(patient.familyName)];
      const has = (name: string): boolean => names.some((each) => begins(each, name));
      const isBirth = typed.birthOn === patient.birthOn;
      const isSame = isBirth && names[0] === given && names[1] === family;
      const isLikely = isBirth ? has(given) || has(family) : typed.birthOn === '' && has(given) && has(family);
      const label = words.known(words.listedName(patient.familyName, patient.givenName), birthDate(patient.birthOn));
      return { id: patient.id, label, isSame, isLikely };
    })
    .filter(({ isLikely }) => isLikely)
    .sort((a, b) => Number(b.isSame) - Number(a.isSame) || a.label.localeCompare(b.label))
    .map(({ id, label, isSame }) => ({ id, label, isSame }));
}

/** What to ask the service for while somebody types; null while there is too little. */
export function askForLikeness({ givenName, familyName, birthOn }: Typed): Record<string, string> | null {
  if (/^\d{4}-\d{2}-\d{2}$/.test(birthOn)) return { birthOn };
  const name = familyName.trim().length >= 2 ? familyName.trim() : givenName.trim();
  return name.length >= 2 ? { q: name } : null;
}
