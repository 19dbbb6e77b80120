import type { TreatmentPath } from '../path-schema.js';
import {
  after,
  chair,
  count,
  disinfectionGate,
  extra,
  handsOn,
  hard,
  hardGate,
  lag,
  machine,
  made,
  need,
  needEach,
  phase,
  step,
  tick,
  ticked,
  turnaround,
  visit,
} from './notation.js';
import { reviewsAfter } from './reviews.js';

const reviews = reviewsAfter('P2');

/** Fracture or tooth repaired, usually within the day. */
export const repair: TreatmentPath = {
  code: 'repair',
  version: 1,
  title: 'Repair or tooth addition',
  summary: 'Assess the cause first; a third fracture in 12 months calls for an examination, a remake is likely.',
  arches: ['upper', 'lower'],
  visits: [
    visit({
      code: 'P1',
      title: 'Assessment, cause, pick-up impression when teeth are added',
      milestone: 'preliminary-impression',
      joins: null,
      chairMinutes: chair(15, 20, 30),
      captures: [needEach('tissue-state')],
      checklist: [
        tick('repair-cause', 'Cause looked for: fit, vertical dimension, a fall'),
        count('fractures-in-12-months', 'Fractures of the last 12 months'),
      ],
      cautions: ['two-identifiers', 'aspiration', 'material-allergy', 'infection'],
    }),
    visit({
      code: 'P2',
      title: 'Re-insertion of the repaired denture',
      milestone: 'placement',
      joins: null,
      chairMinutes: chair(15, 15, 30),
      captures: [needEach('pressure-areas'), need('occlusion')],
      isDelivery: true,
    }),
    // A repair needs no first check of its own unless the second check finds something.
    ...reviews.visits.filter((each) => each.code === 'R2').map((each) => ({ ...each, chained: false })),
  ],
  labPhases: [
    phase('repair', ['P1', 'P2'], turnaround(0, 1, 0), [
      step('repair', 'Repair the fracture or add the tooth', 'finishing', [handsOn(60)], [after('P1')]),
      step('cure', 'Pressure pot, autopolymer', 'processing', [machine(30)], [after('repair')], {
        singleArchFactor: 1,
      }),
      step('check', 'Finish and check', 'checking', [handsOn(15)], [after('cure')]),
    ]),
  ],
  lags: [
    lag('without-denture', 'Agreed time without a denture', ['P1', 'P2'], { max: hard(2, 'calendar-days') }),
    ...reviews.lags.filter((each) => each.to === 'R2'),
  ],
  gates: [
    hardGate('repair-cause-known', 'Cause recorded before the order', { kind: 'prescription', code: 'P1' }, [
      ...ticked('P1', 'repair-cause', 'fractures-in-12-months'),
      { kind: 'case-record', record: 'consent' },
      { kind: 'case-record', record: 'allergies-asked' },
    ]),
    disinfectionGate('P1'),
    hardGate('denture-in-clinic', 'Repaired denture checked and in the clinic', { kind: 'visit', code: 'P2' }, [
      { kind: 'in-the-clinic', object: 'repaired-denture' },
    ]),
  ],
  loops: [
    {
      code: 'repair-failed',
      trigger: 'Repair does not hold or does not fit',
      foundAt: ['P2'],
      remedy: { kind: 'return', to: 'P1' },
      otherwise: null,
      discards: ['repaired-denture'],
      extra: extra([1, 1], [0, 1]),
    },
  ],
  objects: [made('old-denture', 'The broken denture', 'before-case'), made('repaired-denture', 'The repair', 'check')],
  opposing: { startsAfter: 'examination', finishedBefore: 'jaw-relation' },
};
