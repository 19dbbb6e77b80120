import type { TreatmentPath } from '../path-schema.js';
import { consentGates } from './conventional-gates.js';
import { conventionalLoops } from './conventional-loops.js';
import { examination, jawRelation, placement, trialPlacement } from './conventional-visits.js';
import {
  after,
  captured,
  chair,
  count,
  disinfectionGate,
  extra,
  handsOn,
  hardGate,
  lag,
  machine,
  made,
  madeForBoth,
  may,
  needEach,
  partsOut,
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

const combined = visit({
  code: 'D2',
  title: 'Functional impression, then jaw relation, in printed bases',
  milestone: 'impression-and-jaw-relation',
  joins: 'jaw-relation',
  chairMinutes: chair(75, 105, 150),
  kits: ['tracing-set'],
  captures: [
    ...jawRelation.captures,
    needEach('tray-fit'),
    needEach('border-extension'),
    needEach('impression-result'),
    needEach('re-seat-check'),
    needEach('impression-retention'),
    needEach('tissue-state'),
    { code: 'base-thickness', perArch: true, required: false },
    may('buccal-corridor'),
    may('frenum-relief'),
    may('parallel-closure'),
    may('base-rocking'),
    may('pain-on-closing'),
  ],
  checklist: [
    tick('impression-passed-first', 'Functional impression set and passed before any tracing'),
    count('parts-in', 'Parts put in'),
    count('parts-out', 'Parts taken out'),
  ],
  cautions: ['two-identifiers', 'aspiration', 'intraoral-tracing', 'material-allergy', 'infection'],
});

const reviews = reviewsAfter('D4');
const sharedLoops = ['jaw-relation-not-recorded', 'tracing-unusable-in-visit', 'vertical-dimension-out-of-rule'];

/** Printed base plates carry impression and jaw relation in one visit; printed trial denture; printed or milled denture. */
export const digital: TreatmentPath = {
  code: 'digital-printed-bases',
  version: 1,
  title: 'Complete denture, digital, printed base plates',
  summary:
    'Impression and jaw relation in one visit on printed bases. No difference in duration or adjustments, lower laboratory cost, 16 against 16 patients (retrospective, Zurich repository 228358).',
  arches: ['upper', 'lower'],
  visits: [
    {
      ...examination,
      code: 'D1',
      title: 'Examination, consent, preliminary impressions or scan',
      captures: [...examination.captures, may('preliminary-occlusal-vertical-dimension')],
    },
    combined,
    { ...trialPlacement, code: 'D3', chairMinutes: chair(30, 45, 60) },
    { ...placement, code: 'D4', chairMinutes: chair(45, 60, 75) },
    ...reviews.visits,
  ],
  labPhases: [
    phase('base-plates', ['D1', 'D2'], turnaround(2, 3, 1), [
      step('scan-preliminary', 'Scan', 'scanning', [handsOn(15)], [after('D1')]),
      step(
        'design-bases',
        'Design base plates with rims and bearing plate',
        'design',
        [handsOn(40)],
        [after('scan-preliminary')],
      ),
      step('print-bases', 'Print base plates', 'printing', [machine(150)], [after('design-bases')], {
        batch: 'print-plate',
        singleArchFactor: 1,
      }),
      // Supports stay on during post-cure: removing them first increases distortion (Appl Sci 2021;11:10000).
      step(
        'finish-bases',
        'Wash, post-cure on supports, finish',
        'finishing',
        [setting(50), handsOn(30)],
        [after('print-bases')],
      ),
    ]),
    phase('trial-denture', ['D2', 'D3'], turnaround(3, 4, 2), [
      step(
        'scan-record',
        'Scan bases and record',
        'scanning',
        [handsOn(20)],
        [
          {
            code: 'D2',
            lag: 'final-impression-to-scan',
            min: typical(30, 'minutes', 'addition silicone: wait 30–60 min'),
            max: typical(10_080, 'minutes', 'addition silicone: up to 7–14 d'),
          },
        ],
      ),
      step('design-set-up', 'Design the set-up', 'design', [handsOn(60)], [after('scan-record')]),
      step('print-trial', 'Print trial dentures', 'printing', [machine(150)], [after('design-set-up')], {
        batch: 'print-plate',
        singleArchFactor: 1,
      }),
      step(
        'finish-trial',
        'Wash, post-cure, finish the trial dentures',
        'finishing',
        [setting(50), handsOn(30)],
        [after('print-trial')],
      ),
    ]),
    phase('final-denture', ['D3', 'D4'], turnaround(3, 5, 2), [
      step('adjust-design', 'Adjust the design', 'design', [handsOn(20)], [after('D3')]),
      step('print-final', 'Print the bases', 'printing', [machine(180)], [after('adjust-design')], {
        batch: 'print-plate',
        singleArchFactor: 1,
        pointOfNoReturn: 'final-print',
      }),
      step('bond-teeth', 'Bond the teeth, post-cure', 'finishing', [handsOn(45), setting(60)], [after('print-final')]),
      step('finish', 'Finish and polish', 'finishing', [handsOn(60)], [after('bond-teeth')]),
      step('check', 'Check and statement', 'checking', [handsOn(15)], [after('finish')]),
    ]),
  ],
  lags: [
    lag(
      'base-plates-to-impression',
      'Printed bases kept dark, cool and dry; fit re-checked beyond 7 days',
      ['finish-bases', 'D2'],
      {
        max: typical(14, 'calendar-days'),
      },
    ),
    lag('trial-denture-to-trial', 'Printed trial denture not stale', ['finish-trial', 'D3'], {
      max: typical(21, 'calendar-days'),
    }),
    lag('finish-to-placement', 'Finished denture kept wet, not longer than this', ['check', 'D4'], {
      max: typical(21, 'calendar-days'),
    }),
    lag('final-impression-to-placement', 'Then the fit is checked again', ['D2', 'D4'], {
      max: typical(56, 'calendar-days'),
    }),
    ...reviews.lags,
  ],
  gates: [
    ...consentGates('D2', 'D1'),
    hardGate(
      'examination-complete',
      'Examination recorded before the base order',
      { kind: 'prescription', code: 'D1' },
      [
        ...captured('D1', 'prosthodontic-diagnostic-index', 'cawood-howell-class', 'newton-stomatitis'),
        ...ticked('D1', 'medicines'),
      ],
    ),
    disinfectionGate('D1'),
    hardGate(
      'record-complete',
      'Impression passed before tracing; vertical dimensions, sibilant test, stable bases and centric relation recorded',
      { kind: 'prescription', code: 'D2' },
      [
        ...ticked('D2', 'impression-passed-first'),
        partsOut('D2'),
        ...captured(
          'D2',
          'impression-result',
          're-seat-check',
          'tissue-state',
          'vertical-dimension-at-rest',
          'occlusal-vertical-dimension',
          'sibilant-test',
          'closest-speaking-space',
          'base-stability',
          'centric-relation',
          'tooth-selection',
        ),
        { kind: 'no-failed-check', at: 'D2' },
      ],
    ),
    disinfectionGate('D2'),
    hardGate(
      'trial-accepted',
      'Trial placement accepted before the final print',
      { kind: 'prescription', code: 'D3' },
      [
        ...captured(
          'D3',
          'occlusal-vertical-dimension',
          'centric-relation-agreement',
          'patient-acceptance',
          'acceptance-decided-by',
        ),
        { kind: 'no-failed-check', at: 'D3' },
      ],
    ),
    disinfectionGate('D3'),
    hardGate('trial-passed-before-final-print', 'Trial placement passed', { kind: 'lab-step', code: 'print-final' }, [
      { kind: 'stage-passed', at: 'D3' },
    ]),
    hardGate('denture-in-clinic', 'Finished denture checked and in the clinic', { kind: 'visit', code: 'D4' }, [
      { kind: 'in-the-clinic', object: 'finished-denture' },
    ]),
  ],
  loops: [
    {
      code: 'base-does-not-fit',
      trigger: 'Printed base rocks or its borders are short',
      foundAt: ['D2'],
      remedy: { kind: 'return', to: 'design-bases' },
      otherwise: null,
      discards: ['base-plate'],
      extra: extra([1, 1], [2, 3]),
    },
    {
      code: 'impression-flawed',
      trigger: 'Functional impression flawed after two tries',
      foundAt: ['D2'],
      remedy: { kind: 'return', to: 'D2' },
      otherwise: null,
      discards: ['final-impression'],
      extra: extra([1, 1], [0, 0]),
    },
    ...conventionalLoops
      .filter((loop) => sharedLoops.includes(loop.code))
      .map((loop) => ({
        ...loop,
        foundAt: ['D2'],
        remedy: loop.remedy.kind === 'return' ? { ...loop.remedy, to: 'D2' } : loop.remedy,
      })),
    {
      code: 'jaw-relation-wrong-at-trial',
      trigger: 'Vertical dimension or centric relation wrong at trial placement',
      foundAt: ['D3'],
      remedy: { kind: 'return', to: 'D2' },
      otherwise: null,
      discards: ['jaw-relation-record', 'set-up'],
      extra: extra([1, 1], [3, 5]),
    },
    {
      code: 'looks-refused',
      trigger: 'Looks refused at trial placement',
      foundAt: ['D3'],
      remedy: { kind: 'return', to: 'design-set-up' },
      otherwise: null,
      discards: ['set-up'],
      extra: extra([1, 1], [2, 4]),
    },
    {
      code: 'jaw-relation-wrong-after-print',
      trigger: 'Vertical dimension or centric relation wrong at placement',
      foundAt: ['D4'],
      remedy: { kind: 'return', to: 'D2' },
      otherwise: null,
      discards: ['jaw-relation-record', 'set-up', 'finished-denture'],
      extra: extra([1, 3], [5, 8]),
    },
    {
      code: 'poor-retention',
      trigger: 'Poor retention or a base that does not fit',
      foundAt: ['D4', 'R1', 'R2'],
      remedy: { kind: 'return', to: 'D2' },
      otherwise: null,
      discards: ['final-impression', 'set-up', 'finished-denture'],
      extra: extra([1, 4], [5, 8]),
    },
    {
      code: 'flaw-found-in-laboratory',
      trigger: 'Fracture, wrong shade or a failed print found at the laboratory check',
      foundAt: ['check'],
      remedy: { kind: 'return', to: 'print-final' },
      otherwise: null,
      discards: ['finished-denture'],
      extra: extra([0, 0], [2, 6]),
    },
    {
      code: 'mucosa-not-healthy',
      trigger: 'Mucosa inflamed or displaced before the functional impression',
      foundAt: ['D1', 'D2'],
      remedy: { kind: 'healing' },
      otherwise: null,
      discards: [],
      extra: extra([1, 3], [0, 0]),
    },
  ],
  objects: [
    made('preliminary-impression', 'Preliminary impression or scan', 'D1'),
    made('base-plate', 'Printed base plate with rim', 'finish-bases'),
    made('final-impression', 'Functional impression', 'D2'),
    madeForBoth('jaw-relation-record', 'Maxillomandibular relationship record', 'D2'),
    made('set-up', 'Printed trial denture', 'finish-trial'),
    made('finished-denture', 'Finished denture', 'check'),
  ],
  opposing: { startsAfter: null, finishedBefore: null },
};
