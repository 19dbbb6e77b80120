import { messages as english } from './en/disturbances.js';
import { filled, inLanguage } from './messages.js';
import { listed } from './plural.js';

const said = await inLanguage(english, {
  de: () => import('./de/disturbances.js'),
  ar: () => import('./ar/disturbances.js'),
});
const { disturbance } = said;
const counted = (n: number) => ({ n });

const bound = filled(disturbance.bound, (least: number) => ({ least }));

/** Words of what falls away, whom it falls on, and how it is repaired. */
export const disturbanceWords = {
  ...disturbance,
  enter: {
    ...disturbance.enter,
    subjectAt: filled(disturbance.enter.subjectAt, (subject: string, at: string) => ({ subject, at })),
  },
  time: filled(disturbance.time, (from: string, until: string) => ({ from, until })),
  why: filled(disturbance.why, (reason: string) => ({ reason })),
  affected: filled(disturbance.affected, (cases: number, visits: number) => ({ cases, visits })),
  visit: filled(disturbance.visit, (title: string, when: string, clinic: string) => ({ title, when, clinic })),
  work: filled(disturbance.work, counted),
  bound: (moved: number, least: number) => (moved === least ? disturbance.least : bound(least)),
  untouched: filled(disturbance.untouched, (cases: number) => ({ cases })),
  calls: filled(disturbance.calls, counted),
  left: filled(disturbance.left, (cases: readonly string[]) => ({ cases: listed(cases) })),
  acceptOf: filled(disturbance.acceptOf, (label: string) => ({ label })),
};
