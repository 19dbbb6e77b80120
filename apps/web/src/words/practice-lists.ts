import { messages as english } from './en/practice-lists.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/practice-lists.js'),
  ar: () => import('./ar/practice-lists.js'),
});

/** Words of the screen on which a practice keeps its own shades, moulds and arrangements. */
export const toothListWords = said.toothList;

/** Words of the screen that counts what became of the checks. */
export const checkFigureWords = {
  ...said.checkFigures,
  sentence: filled(said.checkFigures.sentence, (n: number) => ({ n })),
};
