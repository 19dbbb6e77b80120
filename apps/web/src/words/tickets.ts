import { messages as english } from './en/tickets.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/tickets.js'), ar: () => import('./ar/tickets.js') });

const ofJob = (job: string) => ({ job });

/** Words of the tickets that go with laboratory work. */
export const ticketWords = {
  ...said.tickets,
  sentence: filled(said.tickets.sentence, (chosen: number) => ({ chosen })),
  linkOf: filled(said.tickets.linkOf, ofJob),
  choose: filled(said.tickets.choose, ofJob),
  code: filled(said.tickets.code, ofJob),
  job: filled(said.tickets.job, (number: string, step: string) => ({ number, step })),
  step: filled(said.tickets.step, (title: string, arches: string) => ({ title, arches })),
  minutes: filled(said.tickets.minutes, (minutes: number) => ({ minutes })),
  printed: filled(said.tickets.printed, (when: string) => ({ when })),
  onlyHere: filled(said.tickets.onlyHere, (address: string) => ({ address })),
};

/** Words of the page that a ticket opens. */
export const jobWords = {
  ...said.job,
  title: filled(said.job.title, (number: string, step: string) => ({ number, step })),
};
