import { messages as english } from './en/freed-time.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/freed-time.js'),
  ar: () => import('./ar/freed-time.js'),
});
const { freed } = said;
const change = (before: string, after: string) => ({ before, after });

/** Words of time that has become free, and of whom it helps. */
export const freedWords = {
  ...freed,
  looked: filled(freed.looked, (looked: number, left: number) => ({ looked, left })),
  move: filled(freed.move, change),
  placement: filled(freed.placement, change),
  previewOf: filled(freed.previewOf, (patient: string) => ({ patient })),
  done: filled(freed.done, (number: string) => ({ number })),
  timeOf: filled(freed.timeOf, (day: string, from: string, to: string) => ({ day, from, to })),
  freed: filled(freed.freed, (when: string) => ({ when })),
};
