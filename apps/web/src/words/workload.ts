import { messages as english } from './en/workload.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/workload.js'), ar: () => import('./ar/workload.js') });

/** Words of the coordinator's search for better plans. */
export const workloadWords = {
  ...said.workload,
  daysTitleOf: filled(said.workload.daysTitleOf, (title: string) => ({ title })),
  day: filled(said.workload.day, (before: number, after: number, open: number) => ({ before, after, open })),
  dayOf: filled(said.workload.dayOf, (centre: string, day: string, change: string) => ({ centre, day, change })),
  /** What is now and what would be, in the direction in which people read. */
  fromTo: filled(said.workload.fromTo, (from: string | number, to: string | number) => ({ from, to })),
  where: filled(said.workload.where, (laboratory: string, centre: string) => ({ laboratory, centre })),
  moves: filled(said.workload.moves, (moves: number) => ({ moves })),
  overtime: filled(said.workload.overtime, (centre: string, day: string, minutes: number) => ({
    centre,
    day,
    minutes,
  })),
  acceptOf: filled(said.workload.acceptOf, (title: string) => ({ title })),
  visits: filled(said.workload.visits, (visits: number) => ({ visits })),
  visit: filled(said.workload.visit, (title: string, clinic: string) => ({ title, clinic })),
};

/** Words of what laboratories propose that moves visits. */
export const visitProposalWords = {
  ...said.visitProposals,
  from: filled(said.visitProposals.from, (laboratory: string, when: string) => ({ laboratory, when })),
  acceptOf: filled(said.visitProposals.acceptOf, (laboratory: string) => ({ laboratory })),
};
