import type { AdjustmentView, AftercareView, SoreSpotView } from '@archwright/contracts';
import { count } from './plural.js';

/** Words of what follows a placement: sore spots, adjustments, referrals, later checks. */
export const aftercareWords = {
  title: (number: string) => `${number} · Sore spots and adjustments`,
  link: 'Sore spots and adjustments',
  loading: 'what followed the placement',
  back: 'To the case',
  cautions: 'Cautions of the patient',
  map: 'Where it is sore',
  mapHint: 'Choose a place to record a sore spot there. A filled diamond counts open spots, a tick healed ones.',
  arch: { upper: 'Upper arch', lower: 'Lower arch' },
  right: "patient's right",
  left: "patient's left",
  asList: 'The same as a list',
  /** "lower ridge left" */
  place: (arch: SoreSpotView['arch'], region: string) => `${arch} ${region.replaceAll('-', ' ')}`,
  placeState: (place: string, open: number, healed: number) =>
    [
      place,
      ...(open > 0 ? [count(open, 'open sore spot', 'open sore spots')] : []),
      ...(healed > 0 ? [`${String(healed)} healed`] : []),
    ].join(', '),
  spots: 'Sore spots',
  noSpots: 'None recorded. Choose a place in the drawing to record one.',
  found: (when: string, by: string) => `Found ${when} by ${by}`,
  pain: (n: number) => `pain ${String(n)} of 10`,
  healed: (when: string) => `healed ${when}`,
  watch: { healed: 'healed', watched: 'watched', refer: 'refer' } satisfies Record<
    SoreSpotView['watch']['state'],
    string
  >,
  cause: {
    'long-border': 'border too long',
    'pressure-of-fitting-surface': 'pressure of the fitting surface',
    'uneven-occlusion': 'uneven occlusion',
    'raised-vertical-dimension': 'vertical dimension too high',
    'rough-surface': 'rough surface',
    undercut: 'undercut',
    'moving-base': 'moving base',
    'not-known': 'not known',
  } satisfies Record<SoreSpotView['suspectedCause'], string>,
  adjustments: 'Adjustments without a sore spot',
  noAdjustments: 'None.',
  done: (when: string, by: string) => `${when}, ${by}`,
  laterChecks: 'Later checks',
  noLaterChecks: 'None is due; a placement makes them due.',
  due: (when: string) => `due ${when}`,
  recallState: {
    due: 'due',
    booked: 'booked',
    done: 'done',
    declined: 'declined',
    withdrawn: 'withdrawn',
  } satisfies Record<AftercareView['recalls'][number]['state'], string>,
  following: 'Cases that follow this one',
};

/** Words of recording a sore spot. */
export const spotWords = {
  title: (place: string) => `New sore spot: ${place}`,
  close: 'Close without recording',
  foundOn: 'Found on',
  pain: 'Pain, as the patient says',
  painOf: (n: number) => (n === 0 ? '0, none' : n === 10 ? '10, the worst' : String(n)),
  cause: 'Suspected cause',
  choose: 'Choose',
  note: 'Note',
  save: 'Record the sore spot',
  need: {
    foundOn: (today: string) => `Choose a day up to ${today}.`,
    pain: 'Choose a number from 0 to 10.',
    suspectedCause: 'Choose what may hurt here; "not known" is an answer too.',
  },
};

/** Words of adjusting a denture. */
export const adjustmentWords = {
  adjust: 'Record an adjustment',
  adjustHere: (place: string) => `Record an adjustment for ${place}`,
  surface: 'Surface',
  surfaces: {
    border: 'border',
    'fitting-surface': 'fitting surface',
    'polished-surface': 'polished surface',
    'occlusal-surface': 'occlusal surface',
  } satisfies Record<AdjustmentView['surface'], string>,
  arch: 'Denture',
  what: 'What was relieved or changed',
  amount: 'How much',
  amountHint: 'In words, such as "a light stroke"',
  save: 'Record it',
  need: { surface: 'Choose a surface.', words: 'Say it in up to 500 characters.' },
};

/** Words of healing and of the referral when it does not heal. */
export const healingWords = {
  heal: {
    label: 'It has healed',
    then: 'The spot is closed. One that comes back is recorded as a new spot.',
    date: { label: 'Healed on', missing: 'Choose the day on which it was seen healed.' },
  },
  referral: 'Two weeks are over',
  choices: {
    referred: { label: 'Referred', then: 'Noted with your name; whom to and why may stand in the note.' },
    declined: { label: 'Not referred', then: 'Noted with your name and your reason.' },
  },
  referralState: {
    open: 'referral to decide',
    referred: 'referred',
    declined: 'not referred',
    resolved: 'healed before a referral',
  } satisfies Record<NonNullable<SoreSpotView['referral']>['state'], string>,
  decided: (by: string, when: string) => `${by}, ${when}`,
};
