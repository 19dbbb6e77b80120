import type { AppointmentView } from '@archwright/contracts';
import { messages as english } from './en/desk.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/desk.js'), ar: () => import('./ar/desk.js') });
const { desk, patient, wish } = said;

const counted = (n: number) => ({ n });
const at = (when: string) => ({ when });

const interpreter = filled(desk.interpreter, (language: string) => ({ language }));
const companion = filled(desk.companion, (name: string) => ({ name }));

/** Words of the day, the calls and the patients. */
export const deskWords = {
  ...desk,
  late: filled(desk.late, (length: string) => ({ length })),
  needs: (needs: AppointmentView['needs']): string[] => [
    ...(needs.wheelchairRoom ? [desk.wheelchairRoom] : []),
    ...(needs.interpreter === null ? [] : [interpreter(needs.interpreter)]),
    ...(needs.companion === null ? [] : [companion(needs.companion)]),
  ],
  sheetNote: filled(desk.sheetNote, at),
  actionOn: filled(desk.actionOn, (action: string, name: string) => ({ action, patient: name })),
  visits: filled(desk.visits, counted),
  bornOn: filled(desk.bornOn, (birth: string) => ({ birth })),
  withIn: filled(desk.withIn, (clinician: string, chair: string) => ({ clinician, chair })),
  placeAt: filled(desk.placeAt, (clinic: string, place: string) => ({ clinic, place })),
  allCalls: filled(desk.allCalls, counted),
  callDue: filled(desk.callDue, at),
  outcomeOf: filled(desk.outcomeOf, (name: string) => ({ patient: name })),
  attempt: filled(desk.attempt, (when: string, outcome: string, by: string) => ({ when, outcome, by })),
};

/** Words of the patient form. */
export const patientWords = {
  ...patient,
  listedName: filled(patient.listedName, (family: string, given: string) => ({ family, given })),
  known: filled(patient.known, (name: string, birth: string) => ({ name, birth })),
  editSentence: filled(patient.editSentence, (birth: string) => ({ birth })),
  takenOver: filled(patient.takenOver, (fields: string) => ({ fields })),
  problems: filled(patient.problems, counted),
  accepted: patient.accepted as Readonly<Record<string, string>>,
};

const fromTo = filled(wish.fromTo, (from: string, to: string) => ({ from, to }));
const fromOn = filled(wish.fromOn, (from: string) => ({ from }));
const until = filled(wish.until, (to: string) => ({ to }));

/** Words of wishes, wherever they are asked for or shown. */
export const wishWords = {
  ...wish,
  removeDay: filled(wish.removeDay, (day: string) => ({ day })),
  days: filled(wish.days, (days: string) => ({ days })),
  brought: filled(wish.brought, (days: string, from: string, to: string) => ({ days, from, to })),
  fromTo: (from: string | null, to: string | null) =>
    from && to ? fromTo(from, to) : from ? fromOn(from) : to ? until(to) : '',
  notOn: filled(wish.notOn, counted),
};
