import { MEASUREMENTS, measurementByCode } from './catalogue.js';

/** Everything that a complete denture is measured, graded and asked by, as the clinical literature groups it. */
const ASKED_FOR: Readonly<Record<string, readonly string[]>> = {
  vertical: ['VDR', 'OVD', 'IRD', 'CSS', 'SIB', 'THIRD', 'THIRD-U', 'THIRD-M', 'THIRD-L', 'DEL', 'SWALLOW'],
  'plane, lips and lines': ['CAMP', 'IPL', 'NLA', 'LIPL', 'INC0', 'SMILE', 'MID', 'CAN', 'CAN-ASYM', 'RIMH', 'IPAP'],
  'bases and borders': ['BORD', 'border-extension', 'post-dam-width', 'BASE', 'tray-border-clearance', 'tray-fit'],
  widths: ['IAW', 'BZW', 'ICW', 'IPD', 'ICAD', 'SIX', 'CIW', 'MW'],
  'grades and classes': [
    'kapur-retention',
    'kapur-stability',
    'kapur-sum',
    'PDI',
    'mandibular-bone-height',
    'maxillary-form',
    'muscle-attachment',
    'skeletal-class',
    'interarch-space',
    'index-modifiers',
    'RIDGE-CLASS',
    'atwood-order',
    'NEWTON',
    'denture-hygiene',
    'mucosa-resilience',
    'saliva-amount',
    'saliva-consistency',
    'tongue-size',
    'tongue-position',
    'palatal-throat-form',
  ],
  'function and outcome': [
    'OHIP',
    'OHIP-ANSWER',
    'VAS',
    'gum-mixing',
    'X50',
    'strokes-to-swallow',
    'occlusion',
    'opening',
  ],
  'findings of the combined visit and the trial': [
    'buccal-corridor',
    'frenum-relief',
    'parallel-closure',
    'ROCKING',
    'pain-on-closing',
    're-seat-check',
    'tracing-risk-explained',
    'patient-acceptance',
    'acceptance-decided-by',
    'tooth-selection',
  ],
};

it.each(Object.entries(ASKED_FOR))('has every code of %s', (_, codes) => {
  expect(codes.filter((code) => isUnknown(code))).toEqual([]);
});

/** Scoring people's minds is outdated and judgemental. */
it('does not offer classes of minds', () => {
  expect(MEASUREMENTS.filter(({ code, name }) => /mind|philosoph|hysteric/i.test(`${code} ${name}`))).toEqual([]);
});

it('computes what can be computed', () => {
  const computed = MEASUREMENTS.filter(({ derived }) => derived === true).map(({ code }) => code);
  expect(computed).toEqual([
    'interocclusal-rest-distance',
    'change-of-occlusal-vertical-dimension',
    'lower-to-middle-third',
    'canine-line-asymmetry',
    'kapur-sum',
    'oral-health-impact',
    'centric-relation',
    'tracing-apex-angle',
    'tracing-asymmetry',
    'tracing-rounding-radius',
    'tracing-arm-scatter',
    'tracing-closure-scatter',
    'tracing-closure-offset',
  ]);
});

function isUnknown(code: string): boolean {
  try {
    measurementByCode(code);
    return false;
  } catch {
    return true;
  }
}
