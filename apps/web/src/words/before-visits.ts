import { messages as english } from './en/before-visits.js';
import { filled, inLanguage } from './messages.js';
import { listed } from './plural.js';

const said = await inLanguage(english, {
  de: () => import('./de/before-visits.js'),
  ar: () => import('./ar/before-visits.js'),
});
const { beforeVisits, arrival, recall, transfer } = said;

const counted = (n: number) => ({ n });
const at = (when: string) => ({ when });

const arrivals = filled(beforeVisits.arrivals, counted);
const recalls = filled(beforeVisits.recalls, counted);
const transfers = filled(beforeVisits.transfers, counted);
const waiting = filled(beforeVisits.waiting, (parts: string) => ({ parts }));

/** Words of what is to be settled before the visits. */
export const beforeVisitsWords = {
  ...beforeVisits,
  waiting: (late: number, due: number, moving: number) =>
    waiting(
      listed([
        ...(late > 0 ? [arrivals(late)] : []),
        ...(due > 0 ? [recalls(due)] : []),
        ...(moving > 0 ? [transfers(moving)] : []),
      ]),
    ),
  more: filled(beforeVisits.more, counted),
};

export const arrivalWords = {
  ...arrival,
  visit: filled(arrival.visit, (when: string, clinic: string) => ({ when, clinic })),
  missing: filled(arrival.missing, (things: string[]) => ({ things: listed(things) })),
};

export const recallWords = {
  ...recall,
  due: filled(recall.due, at),
  overdue: filled(recall.overdue, at),
  about: filled(recall.about, (title: string, number: string) => ({ title, number })),
  bookFor: filled(recall.bookFor, (name: string) => ({ name })),
};

export const transferWords = {
  ...transfer,
  why: filled(transfer.why, (reason: string) => ({ reason })),
  work: filled(transfer.work, counted),
  objects: filled(transfer.objects, (codes: string[]) => ({ codes: listed(codes) })),
};
