import type { Clash } from '../drafts/rebase.js';
import type { ClashRow } from '../look/clash-sheet.js';
import { wishesOfDraft, wishSentence } from '../wishes/wishes-view.js';
import { patientWords as words } from '../words/desk.js';
import type { PatientDraft } from './patient-form-view.js';

const LABELS: Record<keyof PatientDraft, string> = {
  givenName: words.given,
  familyName: words.family,
  birthOn: words.birth,
  sex: words.sex,
  mail: words.mail,
  phone: words.phone,
  address: words.address,
  accessNote: words.access,
  locale: words.locale,
  zone: words.zone,
  companionName: words.companion,
  companionPermitted: words.companionPermitted,
  interpreter: words.interpreter,
  wheelchairRoom: words.wheelchair,
  chairMinutesPerDay: words.minutesPerDay,
  travelMinutes: words.travel,
  remindByMail: words.remindByMail,
  remindByPhone: words.remindByPhone,
  wishes: words.partWishes,
};

/** The label of each field, for sentences about fields. */
export const labelsOf = (fields: readonly (keyof PatientDraft)[]): string[] => fields.map((field) => LABELS[field]);

function inWords(value: PatientDraft[keyof PatientDraft]): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? words.yes : words.no;
  return wishSentence(wishesOfDraft(value));
}

export const patientClashes = (clashes: readonly Clash<PatientDraft>[]): ClashRow[] =>
  clashes.map(({ field, mine, theirs }) => ({
    key: field,
    label: LABELS[field],
    mine: inWords(mine),
    theirs: inWords(theirs),
  }));
