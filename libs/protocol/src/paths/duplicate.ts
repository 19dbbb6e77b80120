import type { TreatmentPath } from '../path-schema.js';
import { consentGates } from './conventional-gates.js';
import { processingSteps } from './conventional-lab.js';
import { examinationCaptures, placement, trialPlacement } from './conventional-visits.js';
import {
  after,
  captured,
  chair,
  disinfectionGate,
  extra,
  handsOn,
  hardGate,
  lag,
  made,
  madeForBoth,
  need,
  needEach,
  phase,
  setting,
  step,
  tick,
  ticked,
  turnaround,
  typical,
  visit,
} from './notation.js';
import { reviewsAfter } from './reviews.js';

const reviews = reviewsAfter('C4');

/** A copy of a denture whose polished surfaces are good; fitting and occlusal surfaces change. */
export const duplicate: TreatmentPath = {
  code: 'duplicate',
  version: 1,
  title: 'Duplicate complete denture, four visits',
  summary: 'The old denture stays with the patient; suits good polished surfaces with worn teeth or lost fit.',
  arches: ['upper', 'lower'],
  visits: [
    visit({
      code: 'C1',
      title: 'Examination, temporary correction, duplicate mould or scan',
      milestone: 'examination',
      joins: 'examination',
      chairMinutes: chair(30, 45, 60),
      captures: examinationCaptures,
      checklist: [
        tick('medicines', 'Medicines and allergies asked'),
        tick('old-denture-judged', 'Old denture judged: polished surfaces worth keeping'),
      ],
      cautions: [
        'two-identifiers',
        'aspiration',
        'material-allergy',
        'general-health',
        'infection',
        'informed-consent',
      ],
    }),
    visit({
      code: 'C2',
      title: 'Wash impression in the replica, vertical dimension and jaw relation',
      milestone: 'impression-and-jaw-relation',
      joins: 'jaw-relation',
      chairMinutes: chair(45, 60, 75),
      captures: [
        needEach('tissue-state'),
        needEach('impression-retention'),
        needEach('impression-result'),
        need('vertical-dimension-at-rest'),
        need('occlusal-vertical-dimension'),
        need('sibilant-test'),
        need('centric-relation'),
        need('tooth-selection'),
      ],
      cautions: ['two-identifiers', 'aspiration', 'material-allergy', 'infection'],
    }),
    { ...trialPlacement, code: 'C3', chairMinutes: chair(30, 45, 45) },
    { ...placement, code: 'C4', chairMinutes: chair(45, 60, 60) },
    ...reviews.visits,
  ],
  labPhases: [
    phase('replica', ['C1', 'C2'], turnaround(2, 3, 1), [
      step('replica', 'Replica in wax or print, tooth side and base', 'wax', [handsOn(60), setting(60)], [after('C1')]),
    ]),
    phase('set-up', ['C2', 'C3'], turnaround(3, 5, 2), [
      step(
        'pour-definitive',
        'Pour the definitive casts',
        'cast-room',
        [handsOn(40), setting(60)],
        [
          {
            code: 'C2',
            lag: 'final-impression-to-pour',
            min: typical(30, 'minutes', 'addition silicone: wait 30–60 min'),
            max: typical(10_080, 'minutes', 'addition silicone: up to 7–14 d'),
          },
        ],
      ),
      step(
        'mount',
        'Articulator mounting',
        'articulator',
        [handsOn(30), setting(30)],
        [after('pour-definitive'), { code: 'C2', lag: 'record-to-mounting', min: null, max: typical(2880, 'minutes') }],
      ),
      step('set-up', 'Tooth set-up after the replica', 'tooth-set-up', [handsOn(120)], [after('mount')]),
    ]),
    phase('processing', ['C3', 'C4'], turnaround(4, 6, 3), processingSteps('C3')),
  ],
  lags: [
    lag('replica-to-impression', 'Replica not stale', ['replica', 'C2'], { max: typical(28, 'calendar-days') }),
    lag('set-up-to-trial', 'Wax set-up not stale', ['set-up', 'C3'], { max: typical(21, 'calendar-days') }),
    lag('finish-to-placement', 'Finished denture kept wet, not longer than this', ['check', 'C4'], {
      max: typical(21, 'calendar-days'),
    }),
    lag('final-impression-to-placement', 'Then the fit is checked again', ['C2', 'C4'], {
      max: typical(56, 'calendar-days'),
    }),
    ...reviews.lags,
  ],
  gates: [
    ...consentGates('C2', 'C1'),
    hardGate('examination-complete', 'Examination recorded before the replica', { kind: 'prescription', code: 'C1' }, [
      ...captured('C1', 'prosthodontic-diagnostic-index', 'newton-stomatitis'),
      ...ticked('C1', 'medicines', 'old-denture-judged'),
    ]),
    disinfectionGate('C1'),
    hardGate('record-complete', 'Impression and jaw relation judged', { kind: 'prescription', code: 'C2' }, [
      ...captured(
        'C2',
        'tissue-state',
        'vertical-dimension-at-rest',
        'occlusal-vertical-dimension',
        'sibilant-test',
        'centric-relation',
        'tooth-selection',
      ),
      { kind: 'no-failed-check', at: 'C2' },
    ]),
    disinfectionGate('C2'),
    hardGate('trial-accepted', 'Trial placement accepted before flasking', { kind: 'prescription', code: 'C3' }, [
      ...captured('C3', 'occlusal-vertical-dimension', 'centric-relation-agreement', 'patient-acceptance'),
      { kind: 'no-failed-check', at: 'C3' },
    ]),
    disinfectionGate('C3'),
    hardGate('trial-passed-before-flasking', 'Trial placement passed', { kind: 'lab-step', code: 'flask' }, [
      { kind: 'stage-passed', at: 'C3' },
    ]),
    hardGate('denture-in-clinic', 'Finished denture checked and in the clinic', { kind: 'visit', code: 'C4' }, [
      { kind: 'in-the-clinic', object: 'finished-denture' },
    ]),
  ],
  loops: [
    {
      code: 'impression-flawed',
      trigger: 'Wash impression flawed after two tries, or the replica does not fit',
      foundAt: ['C2'],
      remedy: { kind: 'return', to: 'C2' },
      otherwise: null,
      discards: ['final-impression'],
      extra: extra([1, 1], [0, 0]),
    },
    {
      code: 'jaw-relation-wrong-at-trial',
      trigger: 'Vertical dimension or centric relation wrong at trial placement',
      foundAt: ['C3'],
      remedy: { kind: 'return', to: 'C2' },
      otherwise: null,
      discards: ['jaw-relation-record', 'final-impression', 'set-up'],
      extra: extra([1, 1], [3, 5]),
    },
    {
      code: 'looks-refused',
      trigger: 'Looks refused at trial placement',
      foundAt: ['C3'],
      remedy: { kind: 'return', to: 'set-up' },
      otherwise: null,
      discards: ['set-up'],
      extra: extra([1, 1], [2, 4]),
    },
    {
      code: 'flaw-found-in-laboratory',
      trigger: 'Fracture, porosity or wrong shade found at the laboratory check',
      foundAt: ['check'],
      remedy: { kind: 'return', to: 'flask' },
      otherwise: null,
      discards: ['finished-denture'],
      extra: extra([0, 0], [2, 6]),
    },
    {
      code: 'mucosa-not-healthy',
      trigger: 'Mucosa inflamed or displaced before the wash impression',
      foundAt: ['C1', 'C2'],
      remedy: { kind: 'healing' },
      otherwise: null,
      discards: [],
      extra: extra([1, 3], [0, 0]),
    },
  ],
  objects: [
    made('replica', 'Replica of the old denture', 'replica'),
    made('final-impression', 'Wash impression in the replica', 'C2'),
    madeForBoth('jaw-relation-record', 'Maxillomandibular relationship record', 'C2'),
    made('set-up', 'Tooth set-up in wax', 'set-up'),
    made('finished-denture', 'Finished denture', 'check'),
  ],
  opposing: { startsAfter: null, finishedBefore: null },
};
