import type { Evaluation } from './evaluation.js';

/** One number that an evaluation gives, under its code in the catalogue of measurements. */
export interface TracingValue {
  readonly code: string;
  readonly value: number;
}

/** Digits that a drawing in tenths of a millimetre supports. */
const rounded = (value: number): number => Math.round(value * 100) / 100;

/** The numbers of a drawn tracing that can be held beside those of others; what the drawing does not show is left out. */
export function tracingValues({ apexAngleDeg, asymmetryDeg, roundingRadiusMm, arms, closures, offsetMm }: Evaluation) {
  const values: [string, number | null][] = [
    ['tracing-apex-angle', apexAngleDeg],
    ['tracing-asymmetry', asymmetryDeg],
    ['tracing-rounding-radius', roundingRadiusMm],
    ['tracing-arm-scatter', Math.max(arms.right.rmsMm, arms.left.rmsMm)],
    ['tracing-closure-scatter', closures?.rmsMm ?? null],
    ['tracing-closure-offset', offsetMm],
  ];
  return values.flatMap(([code, value]): TracingValue[] => (value === null ? [] : [{ code, value: rounded(value) }]));
}
