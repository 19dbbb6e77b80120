import type { PathVisit } from '../path-schema.js';
import { chair, count, may, need, needEach, tick, visit } from './notation.js';

/** Taken at every examination that starts a complete denture. */
export const examinationCaptures = [
  need('prosthodontic-diagnostic-index'),
  needEach('cawood-howell-class'),
  needEach('newton-stomatitis'),
  may('oral-health-impact'),
  may('old-denture-occlusal-vertical-dimension'),
  may('smile-line'),
  may('upper-lip-length'),
];

export const examination = visit({
  code: 'V1',
  title: 'Examination, consent, preliminary impressions',
  milestone: 'examination',
  joins: 'examination',
  chairMinutes: chair(45, 60, 90),
  captures: examinationCaptures,
  checklist: [
    tick('medicines', 'Medicines and allergies asked'),
    tick('photographs-agreed', 'Consent to photographs asked'),
  ],
  cautions: [
    'two-identifiers',
    'aspiration',
    'material-allergy',
    'general-health',
    'infection',
    'informed-consent',
    'identifying-pictures',
  ],
});

export const finalImpression = visit({
  code: 'V2',
  title: 'Border molding and final impressions',
  milestone: 'final-impression',
  joins: 'final-impression',
  chairMinutes: chair(60, 75, 120),
  captures: [
    needEach('tray-fit'),
    needEach('border-extension'),
    needEach('impression-retention'),
    needEach('impression-result'),
    needEach('tissue-state'),
  ],
  checklist: [
    tick('tray-two-short', 'Tray tried in, 2 mm short of the sulcus'),
    tick('palatal-seal', 'Posterior palatal seal marked'),
  ],
  cautions: ['two-identifiers', 'aspiration', 'material-allergy', 'infection'],
});

export const jawRelationCaptures = [
  need('vertical-dimension-at-rest'),
  need('occlusal-vertical-dimension'),
  need('sibilant-test'),
  need('closest-speaking-space'),
  need('base-stability'),
  need('centric-relation'),
  may('tracing-risk-explained'),
  need('tooth-selection'),
  may('midline-offset'),
  may('canine-line-distance'),
  may('smile-line'),
  may('occlusal-plane-to-ala-tragus-line'),
  may('anterior-plane-to-interpupillary-line'),
  may('nasolabial-angle'),
  may('incisal-display-at-rest'),
];

export const jawRelation = visit({
  code: 'V3',
  title: 'Maxillomandibular relationship record',
  milestone: 'jaw-relation',
  joins: 'jaw-relation',
  chairMinutes: chair(45, 75, 105),
  kits: ['tracing-set'],
  captures: jawRelationCaptures,
  checklist: [count('parts-in', 'Parts put in'), count('parts-out', 'Parts taken out')],
  cautions: ['two-identifiers', 'intraoral-tracing', 'aspiration', 'infection'],
});

export const trialCaptures = [
  need('occlusal-vertical-dimension'),
  need('vertical-dimension-at-rest'),
  need('closest-speaking-space'),
  need('midline-offset'),
  need('centric-relation-agreement'),
  need('patient-acceptance'),
  need('acceptance-decided-by'),
];

export const trialPlacement = visit({
  code: 'V4',
  title: 'Trial placement',
  milestone: 'trial',
  joins: 'trial',
  chairMinutes: chair(30, 45, 75),
  captures: trialCaptures,
  checklist: [tick('companion-invited', 'Companion invited')],
  cautions: ['two-identifiers', 'infection'],
});

export const placementCaptures = [
  needEach('kapur-retention'),
  needEach('kapur-stability'),
  need('occlusion'),
  needEach('pressure-areas'),
];

export const placement: PathVisit = visit({
  code: 'V5',
  title: 'Placement',
  milestone: 'placement',
  joins: 'placement',
  chairMinutes: chair(45, 60, 90),
  captures: placementCaptures,
  checklist: [
    tick('instructions-given', 'Wearing and cleaning explained, written copy given'),
    tick('first-check-agreed', 'First check agreed, visit or recorded phone call'),
  ],
  cautions: ['two-identifiers', 'soft-liner-and-adhesive'],
  isDelivery: true,
});
