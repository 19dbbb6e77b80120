import type { TreatmentPath } from '../path-schema.js';
import {
  after,
  captured,
  chair,
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
  setting,
  step,
  tick,
  ticked,
  turnaround,
  visit,
} from './notation.js';
import { reviewsAfter } from './reviews.js';

const reviews = reviewsAfter('E2');

/** A new fitting surface under an acceptable denture. The patient has no denture in between, hence a short hard maximum. */
export const reline: TreatmentPath = {
  code: 'reline',
  version: 1,
  title: 'Laboratory reline',
  summary:
    'Only when vertical dimension, centric relation and tooth position are acceptable and the mucosa is healthy.',
  arches: ['upper', 'lower'],
  visits: [
    visit({
      code: 'E1',
      title: 'Impression inside the denture',
      milestone: 'final-impression',
      joins: null,
      chairMinutes: chair(30, 45, 60),
      captures: [
        needEach('tissue-state'),
        needEach('newton-stomatitis'),
        need('occlusal-vertical-dimension'),
        need('centric-relation-agreement'),
      ],
      checklist: [
        tick('medicines', 'Medicines and allergies asked'),
        tick('tooth-position-acceptable', 'Tooth position and looks acceptable as they are'),
        tick('without-denture-agreed', 'Time without a denture agreed'),
      ],
      cautions: ['two-identifiers', 'aspiration', 'material-allergy', 'infection', 'informed-consent'],
    }),
    visit({
      code: 'E2',
      title: 'Re-insertion of the relined denture',
      milestone: 'placement',
      joins: null,
      chairMinutes: chair(20, 30, 45),
      captures: [needEach('kapur-retention'), need('occlusion'), needEach('pressure-areas')],
      isDelivery: true,
    }),
    ...reviews.visits,
  ],
  labPhases: [
    phase('reline', ['E1', 'E2'], turnaround(0, 2, 0), [
      step('reline', 'Flask, pack the new fitting surface', 'processing', [handsOn(60), setting(30)], [after('E1')], {
        pointOfNoReturn: 'flasking',
      }),
      // 74 °C 2 h + 100 °C 1 h, from memory; the short cycle lets the denture go home the next day.
      step('cure', 'Curing cycle, short', 'curing', [machine(180)], [after('reline')], {
        batch: 'curing-cycle',
        singleArchFactor: 1,
      }),
      step('finish', 'Deflask, finish and polish', 'finishing', [handsOn(30)], [after('cure')]),
      step('check', 'Check', 'checking', [handsOn(15)], [after('finish')]),
    ]),
  ],
  lags: [
    lag('without-denture', 'Agreed time without a denture', ['E1', 'E2'], { max: hard(2, 'calendar-days') }),
    ...reviews.lags,
  ],
  gates: [
    hardGate(
      'consent-and-approval',
      'Consent and treatment approval before the order',
      { kind: 'prescription', code: 'E1' },
      [
        { kind: 'case-record', record: 'consent' },
        { kind: 'case-record', record: 'treatment-approval' },
        { kind: 'case-record', record: 'allergies-asked' },
      ],
    ),
    hardGate(
      'denture-worth-relining',
      'Vertical dimension, centric relation and tooth position acceptable; mucosa healthy',
      { kind: 'prescription', code: 'E1' },
      [
        ...captured(
          'E1',
          'tissue-state',
          'newton-stomatitis',
          'occlusal-vertical-dimension',
          'centric-relation-agreement',
        ),
        ...ticked('E1', 'medicines', 'tooth-position-acceptable', 'without-denture-agreed'),
        { kind: 'no-failed-check', at: 'E1' },
      ],
    ),
    disinfectionGate('E1'),
    hardGate('denture-in-clinic', 'Relined denture checked and in the clinic', { kind: 'visit', code: 'E2' }, [
      { kind: 'in-the-clinic', object: 'relined-denture' },
    ]),
  ],
  loops: [
    {
      code: 'reline-does-not-fit',
      trigger: 'Relined denture does not fit or the vertical dimension changed',
      foundAt: ['E2', 'R1'],
      remedy: { kind: 'return', to: 'E1' },
      otherwise: null,
      discards: ['reline-impression', 'relined-denture'],
      extra: extra([1, 2], [0, 2]),
    },
    {
      code: 'mucosa-not-healthy',
      trigger: 'Mucosa inflamed or displaced: conditioner first',
      foundAt: ['E1'],
      remedy: { kind: 'healing' },
      otherwise: null,
      discards: [],
      extra: extra([1, 3], [0, 0]),
    },
  ],
  objects: [
    made('old-denture', 'The patient’s denture', 'before-case'),
    made('reline-impression', 'Impression inside the denture', 'E1'),
    made('relined-denture', 'New fitting surface', 'check'),
  ],
  // A jaw relation record needs both bases current, so beside a new opposing denture the reline comes first.
  opposing: { startsAfter: 'examination', finishedBefore: 'jaw-relation' },
};
