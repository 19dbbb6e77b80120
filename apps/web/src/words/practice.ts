import { messages as english } from './en/practice.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/practice.js'), ar: () => import('./ar/practice.js') });
const { practice } = said;
const counted = (n: number) => ({ n });

/** Words of the practice as a whole. */
export const practiceWords = {
  ...practice,
  sentence: filled(practice.sentence, (parts: string) => ({ parts })),
  clinics: filled(practice.clinics, counted),
  chairs: filled(practice.chairs, counted),
  clinicians: filled(practice.clinicians, counted),
  laboratories: filled(practice.laboratories, counted),
  paths: filled(practice.paths, counted),
  centre: filled(practice.centre, (name: string, places: number) => ({ name, places })),
  clinician: filled(practice.clinician, (name: string, skills: string) => ({ name, skills })),
  waiting: filled(practice.waiting, counted),
  seeDay: filled(practice.seeDay, (clinic: string) => ({ clinic })),
  seeLoad: filled(practice.seeLoad, (laboratory: string) => ({ laboratory })),
};
