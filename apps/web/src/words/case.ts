import { messages as english } from './en/case.js';
import { filled, inLanguage } from './messages.js';
import { spelled } from './plural.js';

const said = await inLanguage(english, { de: () => import('./de/case.js'), ar: () => import('./ar/case.js') });
const { openCase, offer, change } = said;

const counted = (n: number) => ({ n });
const onDay = (day: string) => ({ day });
const ofVisit = (visit: string) => ({ visit });
const numbered = (number: string, title: string) => ({ number, title });
const bornOn = (name: string, birth: string) => ({ name, birth });
const whereOf = (clinic: string, clinician: string) => ({ clinic, clinician });
const whenOf = (when: string, patient: string) => ({ when, patient });

const stateNames: Readonly<Record<string, string>> = said.case.states;

/** Words of a case's own page. */
export const caseWords = {
  ...said.case,
  stateOf: (state: string) => stateNames[state] ?? spelled(state),
  title: filled(said.case.title, numbered),
  patientLine: filled(said.case.patientLine, bornOn),
  delivery: filled(said.case.delivery, onDay),
  round: filled(said.case.round, counted),
  detail: filled(said.case.detail, (arches: string, round: string) => ({ arches, round })),
  where: filled(said.case.where, whereOf),
  stepFor: filled(said.case.stepFor, (state: string, reason: string) => ({ state, reason })),
  latest: filled(said.case.latest, (by: string, sentence: string) => ({ by, sentence })),
  changeOf: filled(said.case.changeOf, (what: string, title: string) => ({ change: what, title })),
  alertState: said.case.alertState as Readonly<Record<string, string>>,
  moreReminders: filled(said.case.moreReminders, counted),
  reminder: filled(said.case.reminder, (channel: string, when: string) => ({ channel, when })),
  stateNow: filled(said.case.stateNow, (state: string) => ({ state })),
  visits: filled(said.case.visits, counted),
  follows: filled(said.case.follows, (number: string) => ({ number })),
  followedBy: filled(said.case.followedBy, (number: string) => ({ number })),
};

/** Words of opening a case. */
export const openCaseWords = {
  ...openCase,
  choosePatient: filled(openCase.choosePatient, bornOn),
  parentCase: filled(openCase.parentCase, numbered),
  path: filled(openCase.path, (title: string, visits: number, version: number) => ({ title, visits, version })),
};

/** Words of offers and holds. */
export const offerWords = {
  ...offer,
  title: filled(offer.title, numbered),
  sentence: filled(offer.sentence, counted),
  held: filled(offer.held, (left: string) => ({ left })),
  head: filled(offer.head, (patient: string, wishes: string) => ({ patient, wishes })),
  where: filled(offer.where, whereOf),
  thenWhere: filled(offer.thenWhere, (where: string) => ({ where })),
  drawing: filled(offer.drawing, (of: string, caption: string) => ({ offer: of, caption })),
  placement: filled(offer.placement, (of: string) => ({ offer: of })),
  firmOption: filled(offer.firmOption, counted),
  relaxGives: filled(offer.relaxGives, onDay),
  visits: filled(offer.visits, counted),
  offerNumber: filled(offer.offerNumber, counted),
};

const sentence = filled(change.sentence, whenOf);
const sentenceMissed = filled(change.sentenceMissed, whenOf);

/** Words of moving and cancelling one visit. */
export const changeWords = {
  ...change,
  title: filled(change.title, ofVisit),
  anewTitle: filled(change.anewTitle, ofVisit),
  sentence: (when: string, patient: string, isMissed: boolean) => (isMissed ? sentenceMissed : sentence)(when, patient),
  start: filled(change.start, (when: string, clinician: string) => ({ when, clinician })),
  visitOf: filled(change.visitOf, (patient: string, number: string, clinic: string) => ({ patient, number, clinic })),
  summary: filled(change.summary, (visits: number, steps: number, stay: number) => ({ visits, steps, stay })),
  called: filled(change.called, (phone: string, n: number) => ({ phone, n })),
  mailed: filled(change.mailed, counted),
  labTitle: filled(change.labTitle, counted),
};
