import { messages as english } from './en/line.js';
import { filled, inLanguage } from './messages.js';
import { apart } from './plural.js';

const said = await inLanguage(english, { de: () => import('./de/line.js'), ar: () => import('./ar/line.js') });

/** Words that stand in and beside the drawing of a case. */
export const lineWords = {
  ...said.line,
  visitWhere: filled(said.line.visitWhere, (clinic: string, place: string, clinician: string) => ({
    clinic,
    place,
    clinician,
  })),
  stepWhat: filled(said.line.stepWhat, (title: string, arches: string) => ({ title, arches })),
  stepWhere: filled(said.line.stepWhere, (laboratory: string, place: string) => ({ laboratory, place })),
  against: filled(said.line.against, (wish: string, wishes: readonly string[]) => ({ wish, wishes: apart(wishes) })),
};

/** "upper", "lower" or "both arches". */
export const archWords = (arches: readonly ('upper' | 'lower')[]): string =>
  arches.length === 2 ? lineWords.archBoth : arches.map((arch) => lineWords.arch[arch]).join('');
