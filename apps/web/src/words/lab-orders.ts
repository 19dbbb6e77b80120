import { messages as english } from './en/lab-orders.js';
import { filled, inLanguage } from './messages.js';

const { labOrders: said } = await inLanguage(english, {
  de: () => import('./de/lab-orders.js'),
  ar: () => import('./ar/lab-orders.js'),
});

const at = (when: string) => ({ when });

/** Words of work that is ordered from a laboratory of its own, on either side. */
export const labOrderWords = {
  ...said,
  sentence: filled(said.sentence, (out: number, care: number) => ({ out, care })),
  work: filled(said.work, (steps: string, arches: string) => ({ steps, arches })),
  to: filled(said.to, (laboratory: string) => ({ laboratory })),
  from: filled(said.from, (practice: string, clinic: string) => ({ practice, clinic })),
  sent: filled(said.sent, at),
  needed: filled(said.needed, at),
  promised: filled(said.promised, at),
  declined: filled(said.declined, (reason: string) => ({ reason })),
  about: filled(said.about, (number: string) => ({ number })),
  done: filled(said.done, (what: string, number: string) => ({ what, number })),
  day: filled(said.day, (time: string) => ({ time })),
  send: {
    ...said.send,
    out: filled(said.send.out, (laboratory: string, needed: string) => ({ laboratory, needed })),
  },
  acceptThen: filled(said.choices.accept.then, (needed: string) => ({ needed })),
};
