import type { TreatmentPath } from '../path-schema.js';
import { consentGates } from './conventional-gates.js';
import { processingSteps, setUpSteps } from './conventional-lab.js';
import { examinationCaptures, jawRelationCaptures, placement, trialPlacement } from './conventional-visits.js';
import {
  captured,
  chair,
  disinfectionGate,
  extra,
  handsOn,
  hardGate,
  lag,
  made,
  madeForBoth,
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

const impressionAndJawRelation = visit({
  code: 'A1',
  title: 'Examination, definitive impressions and jaw relation',
  milestone: 'impression-and-jaw-relation',
  joins: 'jaw-relation',
  chairMinutes: chair(60, 90, 120),
  captures: [
    ...examinationCaptures,
    ...jawRelationCaptures,
    needEach('border-extension'),
    needEach('impression-result'),
    needEach('impression-retention'),
    needEach('tissue-state'),
  ],
  checklist: [
    tick('medicines', 'Medicines and allergies asked'),
    tick(
      'suited',
      'No flabby or knife-edge ridge, neuromuscular disease, strong gag, change of vertical dimension over 5 mm, index III–IV',
    ),
  ],
  cautions: ['two-identifiers', 'aspiration', 'material-allergy', 'general-health', 'infection', 'informed-consent'],
});

const [mount, ...setUp] = setUpSteps('pour-definitive');
const pour = step(
  'pour-definitive',
  'Pour the definitive casts',
  'cast-room',
  [handsOn(40), setting(60)],
  [
    {
      code: 'A1',
      lag: 'final-impression-to-pour',
      min: typical(30, 'minutes', 'addition silicone: wait 30–60 min'),
      max: typical(10_080, 'minutes', 'addition silicone: up to 7–14 d'),
    },
  ],
);

const reviews = reviewsAfter('A3');

/** Impressions and jaw relation in one visit, trial placement, placement. */
export const abbreviated: TreatmentPath = {
  code: 'abbreviated',
  version: 1,
  title: 'Complete denture, abbreviated, three visits',
  summary:
    'No difference in patient satisfaction against the traditional path in a trial of 122 (Kawai, J Dent 2005;33:659). Unsuited: see the checklist of the first visit (common practice, no source).',
  arches: ['upper', 'lower'],
  visits: [
    impressionAndJawRelation,
    { ...trialPlacement, code: 'A2', chairMinutes: chair(30, 45, 60) },
    { ...placement, code: 'A3' },
    ...reviews.visits,
  ],
  labPhases: [
    phase('set-up', ['A1', 'A2'], turnaround(5, 5, 3), [
      pour,
      ...(mount ? [{ ...mount, after: [...mount.after.map((p) => ({ ...p, lag: null, max: null })), wax()] }] : []),
      ...setUp,
    ]),
    phase('processing', ['A2', 'A3'], turnaround(5, 5, 3), processingSteps('A2')),
  ],
  lags: [
    lag('set-up-to-trial', 'Wax set-up not stale', ['contour', 'A2'], { max: typical(21, 'calendar-days') }),
    lag('finish-to-placement', 'Finished denture kept wet, not longer than this', ['check', 'A3'], {
      max: typical(21, 'calendar-days'),
    }),
    lag('final-impression-to-placement', 'Then the fit is checked again', ['A1', 'A3'], {
      max: typical(56, 'calendar-days'),
    }),
    ...reviews.lags,
  ],
  gates: [
    ...consentGates('A2', 'A1'),
    hardGate('record-complete', 'Impressions and jaw relation judged', { kind: 'prescription', code: 'A1' }, [
      ...captured(
        'A1',
        'prosthodontic-diagnostic-index',
        'newton-stomatitis',
        'vertical-dimension-at-rest',
        'occlusal-vertical-dimension',
        'sibilant-test',
        'centric-relation',
        'tissue-state',
      ),
      ...ticked('A1', 'medicines', 'suited'),
      { kind: 'no-failed-check', at: 'A1' },
    ]),
    disinfectionGate('A1'),
    hardGate('trial-accepted', 'Trial placement accepted before flasking', { kind: 'prescription', code: 'A2' }, [
      ...captured('A2', 'occlusal-vertical-dimension', 'centric-relation-agreement', 'patient-acceptance'),
      { kind: 'no-failed-check', at: 'A2' },
    ]),
    disinfectionGate('A2'),
    hardGate('trial-passed-before-flasking', 'Trial placement passed', { kind: 'lab-step', code: 'flask' }, [
      { kind: 'stage-passed', at: 'A2' },
    ]),
    hardGate('denture-in-clinic', 'Finished denture checked and in the clinic', { kind: 'visit', code: 'A3' }, [
      { kind: 'in-the-clinic', object: 'finished-denture' },
    ]),
  ],
  loops: [
    {
      code: 'impression-flawed',
      trigger: 'Impression flawed after two tries, or no usable jaw relation record',
      foundAt: ['A1'],
      remedy: { kind: 'return', to: 'A1' },
      otherwise: null,
      discards: ['final-impression', 'jaw-relation-record'],
      extra: extra([1, 1], [0, 0]),
    },
    {
      code: 'jaw-relation-wrong-at-trial',
      trigger: 'Vertical dimension or centric relation wrong at trial placement',
      foundAt: ['A2'],
      remedy: { kind: 'return', to: 'mount' },
      otherwise: null,
      discards: ['jaw-relation-record', 'mounting', 'set-up'],
      extra: extra([1, 1], [3, 5]),
    },
    {
      code: 'looks-refused',
      trigger: 'Looks refused at trial placement',
      foundAt: ['A2'],
      remedy: { kind: 'return', to: 'set-up' },
      otherwise: null,
      discards: ['set-up'],
      extra: extra([1, 1], [2, 4]),
    },
    {
      code: 'poor-retention',
      trigger: 'Poor retention or a base that does not fit',
      foundAt: ['A3', 'R1', 'R2'],
      remedy: { kind: 'return', to: 'A1' },
      otherwise: null,
      discards: ['final-impression', 'jaw-relation-record', 'mounting', 'set-up', 'finished-denture'],
      extra: extra([1, 4], [5, 8]),
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
      trigger: 'Mucosa inflamed or displaced before the impression',
      foundAt: ['A1'],
      remedy: { kind: 'healing' },
      otherwise: null,
      discards: [],
      extra: extra([1, 3], [0, 0]),
    },
  ],
  objects: [
    made('final-impression', 'Definitive impression', 'A1'),
    madeForBoth('jaw-relation-record', 'Maxillomandibular relationship record', 'A1'),
    made('mounting', 'Mounted cast', 'mount'),
    made('set-up', 'Tooth set-up in wax', 'contour'),
    made('finished-denture', 'Finished denture', 'check'),
  ],
  opposing: { startsAfter: null, finishedBefore: null },
};

/** The wax record of the first visit is mounted within two days, once the casts are poured. */
function wax(): TreatmentPath['labPhases'][number]['steps'][number]['after'][number] {
  return { code: 'A1', lag: 'record-to-mounting', min: null, max: typical(2880, 'minutes') };
}
