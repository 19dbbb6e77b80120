import { messages as english } from './en/import.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/import.js'), ar: () => import('./ar/import.js') });
const words = said.import;

/** Words of the screen that takes in files. */
export const importWords = {
  ...words,
  file: filled(words.file, (about: string) => ({ about })),
  patientCounts: filled(
    words.patientCounts,
    (rows: number, added: number, updated: number, unchanged: number, rejected: number) => ({
      rows,
      added,
      updated,
      unchanged,
      rejected,
    }),
  ),
  ignored: filled(words.ignored, (columns: string) => ({ columns })),
  more: filled(words.more, (n: number) => ({ n })),
  toBeRepaired: filled(words.toBeRepaired, (n: number) => ({ n })),
  beingRepaired: filled(words.beingRepaired, (n: number) => ({ n })),
  calendarCounts: filled(words.calendarCounts, (busy: number, unchanged: number, gone: number, conflicts: number) => ({
    busy,
    unchanged,
    gone,
    conflicts,
  })),
};
