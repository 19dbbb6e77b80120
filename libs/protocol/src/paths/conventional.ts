import type { PathLag, TreatmentPath } from '../path-schema.js';
import { captured, disinfectionGate, hardGate, lag, phase, ticked, turnaround, typical } from './notation.js';
import { consentGates, jawRelationGates, trialGates } from './conventional-gates.js';
import { processingSteps, rimSteps, setUpSteps, traySteps } from './conventional-lab.js';
import { conventionalLoops, conventionalObjects } from './conventional-loops.js';
import { examination, finalImpression, jawRelation, placement, trialPlacement } from './conventional-visits.js';
import { reviewsAfter } from './reviews.js';

/** How long trays, rims, set-ups and finished dentures may wait for visits V2 to V5. */
export const conventionalLags: PathLag[] = [
  lag('tray-to-final-impression', 'Custom tray: relaxed, not stale', ['trays', 'V2'], {
    min: typical(540, 'minutes', 'acrylic tray best after at least 9–24 h'),
    max: typical(28, 'calendar-days', 'acrylic tray used within about 4 weeks'),
  }),
  lag('rims-to-jaw-relation', 'Occlusion rims not stale', ['rims', 'V3'], { max: typical(28, 'calendar-days') }),
  lag('set-up-to-trial', 'Wax set-up not stale', ['contour', 'V4'], { max: typical(21, 'calendar-days') }),
  lag('finish-to-placement', 'Finished denture kept wet, not longer than this', ['check', 'V5'], {
    max: typical(21, 'calendar-days'),
  }),
  lag('final-impression-to-placement', 'Then the fit is checked again', ['V2', 'V5'], {
    max: typical(56, 'calendar-days'),
  }),
];

const reviews = reviewsAfter('V5');

/** Five visits and reviews: examination, final impressions, jaw relation, trial placement, placement. */
export const conventional: TreatmentPath = {
  code: 'conventional',
  version: 1,
  title: 'Complete denture, conventional, five visits',
  summary:
    'A plan of five visits; teaching-clinic records show 6.0 ± 1.1 (professionals) to 6.7 ± 1.7 (students) fabrication visits, 164 patients (Oral 2024;4:362).',
  arches: ['upper', 'lower'],
  visits: [examination, finalImpression, jawRelation, trialPlacement, placement, ...reviews.visits],
  labPhases: [
    phase('trays', ['V1', 'V2'], turnaround(2, 3, 1), traySteps('V1')),
    phase('bases', ['V2', 'V3'], turnaround(2, 3, 1), rimSteps('V2')),
    phase('set-up', ['V3', 'V4'], turnaround(3, 5, 2), setUpSteps('V3')),
    phase('processing', ['V4', 'V5'], turnaround(4, 6, 3), processingSteps('V4')),
  ],
  lags: [...conventionalLags, ...reviews.lags],
  gates: [
    ...consentGates('V2', 'V1'),
    hardGate(
      'examination-complete',
      'Examination recorded before the tray order',
      { kind: 'prescription', code: 'V1' },
      [
        ...captured('V1', 'prosthodontic-diagnostic-index', 'cawood-howell-class', 'newton-stomatitis'),
        ...ticked('V1', 'medicines'),
      ],
    ),
    disinfectionGate('V1'),
    hardGate('impression-passed', 'Final impression judged before pouring', { kind: 'prescription', code: 'V2' }, [
      ...captured('V2', 'border-extension', 'impression-retention', 'tissue-state'),
      { kind: 'no-failed-check', at: 'V2' },
    ]),
    disinfectionGate('V2'),
    ...jawRelationGates,
    ...trialGates,
    hardGate('denture-in-clinic', 'Finished denture checked and in the clinic', { kind: 'visit', code: 'V5' }, [
      { kind: 'in-the-clinic', object: 'finished-denture' },
    ]),
  ],
  loops: conventionalLoops,
  objects: conventionalObjects,
  opposing: { startsAfter: null, finishedBefore: null },
};
