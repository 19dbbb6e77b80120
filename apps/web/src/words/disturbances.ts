import type { DisturbanceSubject, DisturbanceView } from '@archwright/contracts';
import { count, listed } from './plural.js';

type Proposal = DisturbanceView['proposals'][number];

/** Words of what falls away, whom it falls on, and how it is repaired. */
export const disturbanceWords = {
  title: 'What falls away',
  sentence: 'Say what is away, broken or closed. You see who is affected before anything changes.',
  loading: 'what falls away',
  enter: {
    title: 'Something falls away',
    what: 'What',
    choose: 'Choose what falls away',
    kinds: {
      clinician: 'Clinicians',
      assistant: 'Assistants',
      chair: 'Chairs',
      kit: 'Kits',
      place: 'Bench places',
      clinic: 'Clinics',
      'work-centre': 'Work centres',
      laboratory: 'Laboratories',
      courier: 'Couriers',
    } satisfies Record<DisturbanceSubject['kind'], string>,
    fromDay: 'From',
    fromTime: 'at',
    untilDay: 'Until',
    untilTime: 'at',
    reason: 'Why',
    reasonHint: 'Kept with the entry; the histories of the cases don’t say it.',
    problem: 'Choose what falls away, an end after its start and now, both on the five minutes, and say why.',
    go: 'Show who is affected',
  },
  undecided: 'To be decided',
  decided: 'Decided',
  none: 'Nothing has been entered yet. An absence, a breakdown or a closure that you enter appears here until it is decided.',
  time: (from: string, until: string) => `${from} until ${until}`,
  states: {
    open: 'plans are looked for',
    planned: 'wait for a decision',
    accepted: 'repaired',
    kept: 'closed, visits stayed',
    withdrawn: 'withdrawn',
  } satisfies Record<DisturbanceView['state'], string>,
  why: (reason: string) => `Why: ${reason}`,
  affectedTitle: 'Whom it falls on',
  nobody: 'Nothing that is booked falls into this time.',
  affected: (cases: number, visits: number) =>
    `It falls on ${count(cases, 'case', 'cases')} with ${count(visits, 'visit', 'visits')}. Nothing has moved yet.`,
  otherClinic: 'a case of another clinic',
  work: (n: number) => count(n, 'piece of laboratory work', 'pieces of laboratory work'),
  way: 'Its way to or from the laboratory',
  proposals: 'Ways to repair it',
  noneYet: 'Plans are being looked for. They appear here by themselves.',
  reach: {
    kept: 'Every visit and all laboratory work keep their time.',
    absorbed: 'Laboratory work uses the time that it has to spare.',
    resequenced: 'Laboratory work is put in another order.',
    'visits-moved': 'Only affected cases move visits.',
    'others-make-room': 'Another case makes room.',
    'planned-together': 'The affected cases were planned anew beside each other in several orders.',
  } satisfies Record<Proposal['reach'], string>,
  bound: (moved: number, least: number) =>
    moved === least
      ? 'While all other visits stay, no plan for these cases moves fewer.'
      : `While all other visits stay, no plan for these cases moves fewer than ${count(least, 'visit', 'visits')}.`,
  untouched: (cases: number) => `${count(cases, 'affected case stays', 'affected cases stay')} as planned.`,
  calls: (n: number) => (n === 0 ? 'Nobody has to be called.' : `${count(n, 'call', 'calls')} to make.`),
  left: (cases: readonly string[]) => `No plan was found for ${listed(cases)}: decide about them by hand.`,
  nothingMoves: 'Nothing has to change; accepting it closes the time.',
  accept: 'Accept this plan',
  acceptOf: (label: string) => `Accept: ${label}`,
  keep: 'Close the time, leave every visit where it is',
  withdraw: 'Withdraw the entry',
  stale: 'Something changed meanwhile. What you see now is fresh; look again before you decide.',
};
