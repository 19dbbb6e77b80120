import type { PathGate } from '../path-schema.js';
import { captured, disinfectionGate, hardGate, partsOut } from './notation.js';

export const jawRelationGates: PathGate[] = [
  hardGate(
    'jaw-relation-complete',
    'Vertical dimensions, sibilant test, stable bases and centric relation recorded before mounting',
    { kind: 'prescription', code: 'V3' },
    [
      ...captured(
        'V3',
        'vertical-dimension-at-rest',
        'occlusal-vertical-dimension',
        'sibilant-test',
        'closest-speaking-space',
        'base-stability',
        'centric-relation',
        'tooth-selection',
      ),
      partsOut('V3'),
      { kind: 'no-failed-check', at: 'V3' },
    ],
  ),
  disinfectionGate('V3'),
];

export const trialGates: PathGate[] = [
  hardGate('trial-accepted', 'Trial placement accepted before flasking', { kind: 'prescription', code: 'V4' }, [
    ...captured(
      'V4',
      'occlusal-vertical-dimension',
      'centric-relation-agreement',
      'patient-acceptance',
      'acceptance-decided-by',
    ),
    { kind: 'no-failed-check', at: 'V4' },
  ]),
  hardGate('trial-passed-before-flasking', 'Trial placement passed', { kind: 'lab-step', code: 'flask' }, [
    { kind: 'stage-passed', at: 'V4' },
  ]),
  disinfectionGate('V4'),
];

/** Consent and treatment approval open the first final impression; medicines and allergies are asked before any material. */
export function consentGates(firstFinalImpression: string, examinationVisit: string): PathGate[] {
  return [
    hardGate(
      'consent-and-approval',
      'Consent and treatment approval before the first final impression',
      { kind: 'visit', code: firstFinalImpression },
      [
        { kind: 'case-record', record: 'consent' },
        { kind: 'case-record', record: 'treatment-approval' },
      ],
    ),
    hardGate(
      'consent-before-order',
      'Consent before the first order',
      { kind: 'prescription', code: examinationVisit },
      [
        { kind: 'case-record', record: 'consent' },
        { kind: 'case-record', record: 'treatment-approval' },
      ],
    ),
    hardGate(
      'medicines-and-allergies',
      'Medicines and allergies asked before a material is chosen',
      { kind: 'prescription', code: examinationVisit },
      [
        { kind: 'case-record', record: 'medicines-asked' },
        { kind: 'case-record', record: 'allergies-asked' },
      ],
    ),
  ];
}
