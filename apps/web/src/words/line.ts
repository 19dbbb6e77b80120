import { messages as english } from './en/line.js';
import { inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/line.js'), ar: () => import('./ar/line.js') });

/** Words that stand in and beside the drawing of a case. */
export const lineWords = said.line;

/** "upper", "lower" or "both arches". */
export const archWords = (arches: readonly ('upper' | 'lower')[]): string =>
  arches.length === 2 ? lineWords.archBoth : arches.map((arch) => lineWords.arch[arch]).join('');
