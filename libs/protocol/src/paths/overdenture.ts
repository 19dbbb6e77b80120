import type { TreatmentPath } from '../path-schema.js';
import { conventional, conventionalLags } from './conventional.js';
import { consentGates, jawRelationGates, trialGates } from './conventional-gates.js';
import { processingSteps, rimSteps, setUpSteps, traySteps } from './conventional-lab.js';
import { conventionalLoops, conventionalObjects } from './conventional-loops.js';
import { examinationCaptures, finalImpression, jawRelation, placement, trialPlacement } from './conventional-visits.js';
import {
  chairOneArch,
  disinfectionGate,
  hardGate,
  lag,
  made,
  need,
  needEach,
  phase,
  tick,
  ticked,
  turnaround,
  typical,
  visit,
} from './notation.js';
import { reviewsAfter } from './reviews.js';

const [firstCheck, secondCheck, ...laterReviews] = reviewsAfter('V5').visits;
const reviewLags = reviewsAfter('V5').lags.filter((each) => each.to !== 'R2');

const surgical = ['two-identifiers', 'extraction-and-anticoagulants', 'osteonecrosis', 'general-health', 'infection'];

const planning = visit({
  code: 'O1',
  title: 'Examination, cone-beam image and implant plan, preliminary impressions',
  milestone: 'examination',
  joins: 'examination',
  chairMinutes: chairOneArch(60, 90, 120),
  captures: examinationCaptures,
  checklist: [
    tick('medicines', 'Medicines and allergies asked'),
    tick('implant-plan', 'Implant sites planned on the cone-beam image'),
    tick('alternatives', 'Alternatives and surgical risks explained'),
  ],
  cautions: [...surgical, 'aspiration', 'material-allergy', 'informed-consent'],
  mayTravel: false,
});

const surgery = visit({
  code: 'O2',
  title: 'Placement of two implants, old denture relieved',
  milestone: 'surgery',
  joins: null,
  chairMinutes: chairOneArch(60, 90, 150),
  skills: ['implant-surgery'],
  kits: ['surgical-set'],
  checklist: [tick('site-named', 'Sites named by ISO 3950 and by the patient’s side')],
  cautions: surgical,
  mayTravel: false,
  pointOfNoReturn: 'surgery',
});

const pickUp = visit({
  code: 'O4',
  title: 'Attachment housing pick-up',
  milestone: 'attachment-pick-up',
  joins: null,
  chairMinutes: chairOneArch(45, 60, 90),
  captures: [needEach('kapur-retention'), need('occlusion')],
  checklist: [tick('blocked-out', 'Housings and undercuts blocked out completely')],
  cautions: ['two-identifiers', 'aspiration', 'locked-denture', 'monomer-and-heat', 'material-allergy'],
  mayTravel: false,
});

/** Two interforaminal implants, healing, a new lower denture, attachments picked up after settling. */
export const overdenture: TreatmentPath = {
  code: 'two-implant-overdenture',
  version: 1,
  title: 'Lower overdenture on two implants',
  summary:
    'Two implants for the lower jaw are named first choice by a 2002 consensus and minimum standard by a 2009 statement (cited in Appl Sci 2021;11:8974).',
  arches: ['lower'],
  visits: [
    planning,
    surgery,
    { ...finalImpression, title: 'Attachments seated, border molding and final impression' },
    jawRelation,
    trialPlacement,
    placement,
    ...(firstCheck ? [firstCheck] : []),
    pickUp,
    ...(secondCheck ? [{ ...secondCheck, title: 'Check after the pick-up: sore spots, retention and occlusion' }] : []),
    ...laterReviews,
  ],
  labPhases: [
    phase('trays', ['O1', 'V2'], turnaround(2, 3, 1), traySteps('O1')),
    phase('bases', ['V2', 'V3'], turnaround(2, 3, 1), rimSteps('V2')),
    phase('set-up', ['V3', 'V4'], turnaround(3, 5, 2), setUpSteps('V3')),
    phase('processing', ['V4', 'V5'], turnaround(4, 6, 3), processingSteps('V4')),
  ],
  lags: [
    lag('implants-heal', 'Implants heal, lower jaw 8–12 weeks; a trial left them unloaded 3.5 months', ['O2', 'V2'], {
      min: typical(56, 'calendar-days'),
    }),
    ...conventionalLags,
    ...reviewLags,
    lag('settling-to-pick-up', 'Pick-up after one to two weeks of settling', ['V5', 'O4'], {
      min: typical(7, 'calendar-days'),
      max: typical(21, 'calendar-days'),
    }),
    lag('pick-up-to-check', 'Check after the pick-up', ['O4', 'R2'], {
      min: typical(1440, 'minutes'),
      max: typical(4320, 'minutes'),
    }),
  ],
  gates: [
    hardGate('medicines-before-surgery', 'Medicines, consent and plan before surgery', { kind: 'visit', code: 'O2' }, [
      { kind: 'case-record', record: 'medicines-asked' },
      { kind: 'case-record', record: 'consent' },
      ...ticked('O1', 'medicines', 'implant-plan', 'alternatives'),
    ]),
    ...consentGates('V2', 'O1'),
    disinfectionGate('O1'),
    ...conventional.gates.filter((each) =>
      ['impression-passed', 'disinfected-v2', 'denture-in-clinic'].includes(each.code),
    ),
    ...jawRelationGates,
    ...trialGates,
  ],
  loops: conventionalLoops.map((loop) => ({
    ...loop,
    foundAt: loop.foundAt.map((code) => (code === 'V1' ? 'O1' : code)),
  })),
  objects: [
    ...conventionalObjects.map((object) => (object.madeAt === 'V1' ? { ...object, madeAt: 'O1' } : object)),
    made('old-denture', 'Old lower denture, relieved and soft-lined', 'before-case'),
  ],
  opposing: { startsAfter: null, finishedBefore: null },
};
