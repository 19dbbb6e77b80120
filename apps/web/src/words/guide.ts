import type { Role } from '@archwright/contracts';

/** One step of a first task: on which pages it is done, and what to do there. */
export interface GuideStep {
  /** The address at which the step before is done and this one begins. */
  at: RegExp;
  text: string;
}

const PRACTICE: readonly GuideStep[] = [
  { at: /^\/practice$/, text: 'Read what waits for a person, then open the day of a clinic.' },
  { at: /^\/desk$/, text: 'Look at the day by chair or by clinician, then open a case by its number.' },
  {
    at: /^\/desk\/cases\/[^/]+$/,
    text: 'Follow the case along its line: what is planned, what happened, and who did what.',
  },
];

/** A first task for each role of the demonstration: small enough for a few minutes, and whole. */
export const guideSteps: Record<Role, readonly GuideStep[]> = {
  'front-desk': [
    { at: /^\/desk$/, text: 'A patient calls. Press / and type alma, then Enter.' },
    { at: /^\/find$/, text: 'Choose “Open a case” beside her name.' },
    { at: /^\/desk\/cases\/new$/, text: 'Choose a path for the upper arch; the lower one follows. Then find times.' },
    {
      at: /^\/desk\/cases\/[^/]+\/offers$/,
      text: 'Compare the offers, hold one while she is on the phone, and confirm all visits.',
    },
    {
      at: /^\/desk\/cases\/[^/]+$/,
      text: 'Every visit and the laboratory work between them are booked. Try to move one: nothing changes before you have seen what would.',
    },
  ],
  lab: [
    { at: /^\/bench$/, text: 'Take the first work of a day: start it, and finish it or ask the clinic something.' },
    {
      at: /^\/bench\/cases\/[^/]+$/,
      text: 'All the work of one case, with what the clinic ordered. Go back to the bench or on to the parcels.',
    },
    { at: /^\/bench\/parcels$/, text: 'Whatever leaves goes in a parcel, checked object by object where it arrives.' },
  ],
  clinician: [
    { at: /^\/chair$/, text: 'Open a visit. Where the day has none, look at a later one.' },
    {
      at: /^\/chair\/stages\/[^/]+$/,
      text: 'Type a measurement and watch its verdict; what the laboratory still needs stands beside it.',
    },
    { at: /^\/desk\/cases\/[^/]+$/, text: 'The case on one line, from the first visit to the last check.' },
  ],
  manager: PRACTICE,
  administrator: PRACTICE,
};

export const guideWords = {
  label: 'First task',
  step: (step: number, steps: number) => `First task, step ${String(step)} of ${String(steps)}:`,
  hide: 'Hide the first task',
};
