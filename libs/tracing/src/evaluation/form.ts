import type { TracingForm } from '@archwright/measures';
import type { Evaluation } from './evaluation.js';

/** Names after Gerber and others, from memory; the features that tell them apart are project defaults. */
export type EvaluatedForm = TracingForm | 'double';

const ROUNDED_MM = 0.5;
const MINIATURE_MM = 3;
const GAP_MM = 1;
const WAVY_RMS_MM = 0.3;
const FLAT_DEG = 140;
const ASYMMETRIC_DEG = 10;
const LENGTH_SYMMETRY = 0.7;
const DORSAL_MM = 0.5;

/** The first that applies, the one that matters most first. */
export function formOf(of: Omit<Evaluation, 'form'>): EvaluatedForm {
  const { arms } = of;
  const rms = Math.max(arms.right.rmsMm, arms.left.rmsMm);
  if (of.apexCount === 'double') return 'double';
  if ((of.dorsalExtensionMm ?? 0) > DORSAL_MM) return 'dorsally-extended';
  if (Math.max(arms.right.lengthMm, arms.left.lengthMm) < MINIATURE_MM) return 'miniature';
  if ((of.roundingRadiusMm ?? 0) >= ROUNDED_MM) return 'rounded';
  if (Math.max(arms.right.gapMm, arms.left.gapMm) > GAP_MM || rms > WAVY_RMS_MM) return 'interrupted';
  if (of.apexAngleDeg > FLAT_DEG) return 'flat';
  if (of.asymmetryDeg > ASYMMETRIC_DEG || of.lengthSymmetry < LENGTH_SYMMETRY) return 'asymmetric';
  return 'typical';
}
