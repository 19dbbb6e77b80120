import type { Measurement, MethodKey, Unit } from '../measurement.js';
import { projectDefault } from '../standing.js';

const method: readonly MethodKey[] = [
  { key: 'stylus', question: 'Which jaw carries the stylus?', options: ['lower', 'upper'], required: true },
  {
    key: 'posture',
    question: 'Posture while tracing?',
    options: ['upright-unsupported', 'upright-supported', 'reclined'],
    required: true,
  },
];

const computed = (
  code: string,
  name: string,
  unit: Unit,
  resolution: number,
  most: number,
  caution: string,
): Measurement => ({
  code: `tracing-${code}`,
  name,
  group: 'tracing',
  kind: 'number',
  unit,
  resolution,
  plausible: { min: 0, max: most },
  usual: null,
  method,
  capturedAt: ['jaw-relation'],
  derived: true,
  source: projectDefault('computed from the points of the tracing; no usual range is published'),
  caution,
});

/** What the evaluation of a drawn tracing gives. Their limits belong to the checks of tracings, where they have any. */
export const TRACING_MEASUREMENTS: readonly Measurement[] = [
  computed(
    'apex-angle',
    'Apex angle of the tracing',
    'deg',
    0.5,
    180,
    'Hangs on where the needle stands: compared only between tracings of one stylus side.',
  ),
  computed('asymmetry', 'Asymmetry of the tracing’s arms', 'deg', 0.5, 90, 'Note a restriction on the shorter side.'),
  computed('rounding-radius', 'Rounding of the tracing’s apex', 'mm', 0.1, 20, 'A blunt apex is traced again.'),
  computed(
    'arm-scatter',
    'Scatter of the tracing’s arms',
    'mm',
    0.05,
    5,
    'Look for contact, debris, a lifting needle.',
  ),
  computed('closure-scatter', 'Scatter of the closures', 'mm', 0.05, 10, 'Closures are made without guidance.'),
  computed(
    'closure-offset',
    'Closures, distance from the apex',
    'mm',
    0.1,
    20,
    'A tapping point slightly in front of the apex is common.',
  ),
];
