import type { Problem } from '@archwright/contracts';
import { messages as english } from './en/frame.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/frame.js'), ar: () => import('./ar/frame.js') });

/** Words for refusals whose code is known; any other is shown in the server's own words. */
const byCode: Readonly<Record<string, string>> = said.frame.codes;

/** Words of the frame that every workplace shares. */
export const frameWords = {
  ...said.frame,
  loading: filled(said.frame.loading, (what: string) => ({ what })),
  badAnswer: filled(said.frame.badAnswer, (detail: string) => ({ detail })),
  problem: (problem: Problem) => byCode[problem.code] ?? (problem.detail || problem.title),
};

/** Words of a decision with its reason, wherever one is taken. */
export const decisionWords = {
  ...said.decision,
  about: filled(said.decision.about, (what: string) => ({ what })),
  saveOf: filled(said.decision.saveOf, (choice: string, about: string) => ({ choice, about })),
};

/** Words of the sign-in page. */
export const signInWords = said.signIn;

/** Words of the demonstration's mail. */
export const caughtMailWords = {
  ...said.caughtMail,
  to: filled(said.caughtMail.to, (address: string) => ({ address })),
};

/** Words of the search page. */
export const findWords = {
  ...said.find,
  results: filled(said.find.results, (q: string) => ({ q })),
  goToDay: filled(said.find.goToDay, (day: string) => ({ day })),
  nothing: filled(said.find.nothing, (q: string) => ({ q })),
  openCaseFor: filled(said.find.openCaseFor, (name: string) => ({ name })),
};
