import { count } from './plural.js';

/** Words of the coordinator's search for better plans. */
export const workloadWords = {
  title: 'Better plans for this work',
  loading: 'the search',
  none: 'Nobody has looked for better plans yet. A search changes nothing by itself.',
  look: 'Look for better plans',
  lookAgain: 'Look again',
  cancel: 'Cancel the search',
  cancelled: 'The search is cancelled.',
  lateTitle: 'Late as it is planned',
  effectTitle: 'What it would change',
  figure: 'Figure',
  now: 'Now',
  then: 'If accepted',
  lateCases: 'Late cases',
  lateMinutes: 'Minutes late, all together',
  fullDays: 'Days above 85 % at a work centre',
  daysTitle: 'Load of the days that change',
  centre: 'Work centre',
  day: (before: number, after: number, open: number) =>
    `${String(before)} minutes now, ${String(after)} if accepted, ${String(open)} open`,
  dayOf: (centre: string, day: string, change: string) => `${centre}, ${day}: ${change}`,
  moves: (moves: number) => `${count(moves, 'step', 'steps')} to move`,
  overtimeTitle: 'Overtime that somebody has to agree to',
  overtime: (centre: string, day: string, minutes: number) => `${centre}, ${day}: ${String(minutes)} min`,
  accept: 'Accept and move the work',
  acceptOf: (title: string) => `Accept and move the work: ${title}`,
  accepted: 'The work has moved. No visit has.',
  state: { accepted: 'accepted', superseded: 'no longer open' },
  stale: 'The work has changed since this was found, and nothing was moved. Look again.',
};
