import { messages as english } from './en/screening.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/screening.js'),
  ar: () => import('./ar/screening.js'),
});

/** Words of what stands out. */
export const screeningWords = {
  ...said.screening,
  found: filled(said.screening.found, (kind: string, when: string) => ({ kind, when })),
  foundForYou: filled(said.screening.foundForYou, (kind: string, when: string) => ({ kind, when })),
  markSeen: filled(said.screening.markSeen, (about: string) => ({ about })),
  openCase: filled(said.screening.openCase, (number: string, patient: string) => ({ number, patient })),
};
