import type { TreatmentPath } from '../path-schema.js';
import { conventionalLags } from './conventional.js';
import { consentGates } from './conventional-gates.js';
import { processingSteps, rimSteps, setUpSteps } from './conventional-lab.js';
import { examination, finalImpression, jawRelation, placement, trialPlacement } from './conventional-visits.js';
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
  may,
  partsOut,
  phase,
  step,
  tick,
  ticked,
  turnaround,
  typical,
  visit,
} from './notation.js';
import { immediateReviewsAfter } from './reviews.js';

const surgicalCautions = [
  'two-identifiers',
  'aspiration',
  'extraction-and-anticoagulants',
  'osteonecrosis',
  'general-health',
];

const posteriorExtraction = visit({
  code: 'I1',
  title: 'Extraction of the posterior teeth, opposing premolars kept',
  milestone: 'extraction',
  joins: null,
  chairMinutes: chair(30, 60, 90),
  skills: ['oral-surgery'],
  mayTravel: false,
  checklist: [tick('teeth-named', 'Teeth to extract named by ISO 3950 and by the patient’s side')],
  cautions: surgicalCautions,
  pointOfNoReturn: 'extraction',
});

const extractionAndPlacement = visit({
  ...placement,
  code: 'I5',
  title: 'Extraction of the remaining teeth and placement',
  chairMinutes: chair(60, 90, 150),
  skills: ['complete-dentures', 'oral-surgery'],
  mayTravel: false,
  checklist: [
    tick('denture-inspected', 'Denture inspected in the clinic before any tooth is drawn'),
    tick('teeth-named', 'Teeth to extract named by ISO 3950 and by the patient’s side'),
    tick('stays-in', 'Patient told to leave the denture in until the first check'),
  ],
  cautions: [...surgicalCautions, 'soft-liner-and-adhesive'],
  pointOfNoReturn: 'extraction',
});

const softLiner = visit({
  code: 'I7',
  title: 'Soft liner as needed',
  milestone: 'review',
  joins: null,
  chairMinutes: chair(20, 30, 45),
  captures: [may('tissue-state')],
  cautions: ['two-identifiers', 'monomer-and-heat', 'soft-liner-and-adhesive'],
  isReview: true,
  chained: false,
});

const definitive = visit({
  code: 'I8',
  title: 'Definitive reline or new denture decided',
  milestone: 'review',
  joins: null,
  chairMinutes: chair(20, 30, 45),
  captures: [may('tissue-state')],
  isReview: true,
  chained: false,
});

const reviews = immediateReviewsAfter('I5');
const firstReviews = reviews.visits.filter((each) => each.chained);
const laterReviews = reviews.visits.filter((each) => !each.chained && each.milestone === 'review');
const recall = reviews.visits.filter((each) => each.milestone === 'recall');
const renamed: Record<string, string> = { V2: 'I2', V3: 'I3', V4: 'I4', V5: 'I5' };
const own = (code: string): string => renamed[code] ?? code;

/** Posterior extraction and healing, then impressions to a posterior trial; remaining teeth drawn at placement. */
export const immediate: TreatmentPath = {
  code: 'immediate',
  version: 1,
  title: 'Immediate complete denture, two phases',
  summary:
    'Consent says: looser fit, relines, a remake is likely, often no full anterior trial. Book placement early in the day and week, so that the next day is a working day.',
  arches: ['upper', 'lower'],
  visits: [
    {
      ...examination,
      code: 'I0',
      title: 'Examination and extended consent',
      checklist: [
        ...examination.checklist,
        tick('immediate-limits', 'Explained: looser fit, relines, remake likely, often no full anterior trial'),
      ],
      cautions: [...surgicalCautions, 'material-allergy', 'informed-consent', 'identifying-pictures'],
    },
    posteriorExtraction,
    {
      ...finalImpression,
      code: 'I2',
      title: 'Final impression, two-part or custom tray',
      chairMinutes: chair(60, 75, 105),
      checklist: [tick('palatal-seal', 'Posterior palatal seal marked')],
    },
    {
      ...jawRelation,
      code: 'I3',
      title: 'Jaw relation; tooth position, shade and photographs before teeth are lost',
      chairMinutes: chair(45, 60, 90),
      checklist: [...jawRelation.checklist, tick('tooth-positions', 'Tooth position, shade and photographs recorded')],
    },
    { ...trialPlacement, code: 'I4', title: 'Posterior trial placement', chairMinutes: chair(30, 45, 60) },
    extractionAndPlacement,
    ...firstReviews,
    softLiner,
    ...laterReviews,
    definitive,
    ...recall,
  ],
  labPhases: [
    phase('bases', ['I2', 'I3'], turnaround(2, 3, 1), rimSteps('I2')),
    phase('set-up', ['I3', 'I4'], turnaround(3, 5, 2), setUpSteps('I3')),
    phase('processing', ['I4', 'I5'], turnaround(5, 7, 4), [
      step('trim-cast', 'Trim the cast, clear surgical template', 'cast-room', [handsOn(45)], [after('I4')]),
      ...processingSteps('trim-cast'),
    ]),
  ],
  lags: [
    lag('extraction-to-final-impression', 'Healing before impressions', ['I1', 'I2'], {
      min: typical(21, 'calendar-days', '3–6 weeks; older texts 6–8; one school protocol 2–3'),
    }),
    ...conventionalLags
      .filter((each) => each.from !== 'trays')
      .map((each) => ({ ...each, from: own(each.from), to: own(each.to) })),
    ...reviews.lags,
    lag('placement-to-soft-liner', 'Soft liner from about 2–4 weeks on', ['I5', 'I7'], {
      min: typical(14, 'calendar-days'),
      max: typical(28, 'calendar-days'),
    }),
    lag('placement-to-definitive', 'Definitive reline 3–6 months, new denture by 12', ['I5', 'I8'], {
      min: typical(90, 'calendar-days', 'not before 3 months'),
      max: typical(365, 'calendar-days', 'at most 12 months'),
    }),
  ],
  gates: [
    hardGate('medicines-before-extraction', 'Medicines asked before any extraction', { kind: 'visit', code: 'I1' }, [
      { kind: 'case-record', record: 'medicines-asked' },
      ...ticked('I0', 'medicines', 'immediate-limits'),
      { kind: 'case-record', record: 'consent' },
    ]),
    ...consentGates('I2', 'I2'),
    hardGate('examination-complete', 'Examination recorded', { kind: 'visit', code: 'I1' }, [
      ...captured('I0', 'prosthodontic-diagnostic-index', 'cawood-howell-class', 'newton-stomatitis'),
    ]),
    hardGate('impression-passed', 'Final impression judged before pouring', { kind: 'prescription', code: 'I2' }, [
      ...captured('I2', 'border-extension', 'impression-retention', 'tissue-state'),
      { kind: 'no-failed-check', at: 'I2' },
    ]),
    disinfectionGate('I2'),
    hardGate(
      'jaw-relation-complete',
      'Vertical dimensions, stable bases, centric relation and tooth positions recorded before mounting',
      { kind: 'prescription', code: 'I3' },
      [
        ...captured(
          'I3',
          'vertical-dimension-at-rest',
          'occlusal-vertical-dimension',
          'sibilant-test',
          'base-stability',
          'centric-relation',
        ),
        ...ticked('I3', 'tooth-positions'),
        partsOut('I3'),
        { kind: 'no-failed-check', at: 'I3' },
      ],
    ),
    disinfectionGate('I3'),
    hardGate('trial-accepted', 'Posterior trial accepted before flasking', { kind: 'prescription', code: 'I4' }, [
      ...captured('I4', 'occlusal-vertical-dimension', 'centric-relation-agreement', 'patient-acceptance'),
      { kind: 'no-failed-check', at: 'I4' },
    ]),
    disinfectionGate('I4'),
    hardGate('trial-passed-before-flasking', 'Posterior trial passed', { kind: 'lab-step', code: 'flask' }, [
      { kind: 'stage-passed', at: 'I4' },
    ]),
    {
      ...hardGate(
        'denture-in-clinic',
        'Denture finished, checked and in the clinic before any tooth is drawn',
        { kind: 'visit', code: 'I5' },
        [
          { kind: 'in-the-clinic', object: 'finished-denture' },
          { kind: 'case-record', record: 'medicines-asked' },
        ],
      ),
      overridable: false,
    },
  ],
  loops: [
    {
      code: 'impression-flawed',
      trigger: 'Final impression flawed after two tries',
      foundAt: ['I2'],
      remedy: { kind: 'return', to: 'I2' },
      otherwise: null,
      discards: ['final-impression'],
      extra: extra([1, 1], [0, 0]),
    },
    {
      code: 'base-does-not-fit',
      trigger: 'Record base unstable because it does not fit',
      foundAt: ['I3'],
      remedy: { kind: 'return', to: 'I2' },
      otherwise: null,
      discards: ['final-impression', 'definitive-cast', 'record-base'],
      extra: extra([1, 1], [2, 3]),
    },
    {
      code: 'jaw-relation-wrong-at-trial',
      trigger: 'Vertical dimension or centric relation wrong at the posterior trial',
      foundAt: ['I4'],
      remedy: { kind: 'return', to: 'I3' },
      otherwise: null,
      discards: ['jaw-relation-record', 'mounting', 'set-up'],
      extra: extra([1, 1], [3, 5]),
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
      trigger: 'Mucosa inflamed or sockets not healed before the final impression',
      foundAt: ['I2'],
      remedy: { kind: 'healing' },
      otherwise: null,
      discards: [],
      extra: extra([1, 3], [0, 0]),
    },
  ],
  objects: [
    made('final-impression', 'Final impression', 'I2'),
    made('definitive-cast', 'Definitive cast', 'pour-definitive'),
    made('record-base', 'Record base with rim', 'rims'),
    madeForBoth('jaw-relation-record', 'Maxillomandibular relationship record', 'I3'),
    made('mounting', 'Mounted cast', 'mount'),
    made('set-up', 'Tooth set-up in wax', 'contour'),
    made('finished-denture', 'Finished denture and surgical template', 'check'),
  ],
  opposing: { startsAfter: null, finishedBefore: null },
};
