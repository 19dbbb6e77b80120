import { messages as english } from './en/lost.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/lost.js'), ar: () => import('./ar/lost.js') });

const at = (when: string) => ({ when });

/** Words of work that will be late, as its bench says it. */
export const lateWords = {
  ...said.late,
  planned: filled(said.late.planned, at),
  said: filled(said.late.said, at),
  done: filled(said.late.done, (visits: number, step: string) => ({ visits, step })),
};

/** Words of a visit that does not take place. */
export const lostVisitWords = {
  ...said.lostVisit,
  title: filled(said.lostVisit.title, (title: string) => ({ title })),
  sentence: filled(said.lostVisit.sentence, (patient: string, when: string, state: string) => ({
    patient,
    when,
    state,
  })),
  linkOf: filled(said.lostVisit.linkOf, (patient: string) => ({ patient })),
  over: filled(said.lostVisit.over, (state: string) => ({ state })),
};
