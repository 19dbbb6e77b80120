import { mean } from 'simple-statistics';
import { NoSpreadError } from '../errors.js';
import { MAD_TO_SD, medianAndDeviation } from '../sample/median-deviation.js';
import { requirePositive, requireSample } from '../sample/sample.js';

/** What a score was measured in: the MAD, or what stands in for it where over half the values are equal. */
export type RobustScale = 'median-absolute-deviation' | 'mean-absolute-deviation' | 'resolution';

export interface ModifiedZ {
  readonly median: number;
  readonly mad: number;
  /** MAD on the scale of a standard deviation. */
  readonly madScaled: number;
  readonly scale: RobustScale;
  /** What one score is, in the values' unit. */
  readonly unit: number;
  readonly scores: readonly number[];
  /** Positions, from 0, of scores beyond the cut. */
  readonly outliers: readonly number[];
}

/** The customary cut (Iglewicz & Hoaglin). */
export const MODIFIED_Z_CUT = 3.5;
/** Φ⁻¹(0.75) as usually rounded. */
const NORMAL_QUARTILE = 0.6745;
/** Standard deviation of a normal variable in mean absolute deviations: √(π/2). */
const MEAN_DEVIATION_TO_SD = 1.253314;

/**
 * Distance from the median in robust standard deviations.
 *
 * @param resolution smallest step of the instrument, in the values' unit: the last resort when no value varies
 * @throws {NoSpreadError} when no value varies and no resolution is given
 * @see Iglewicz & Hoaglin (1993), How to Detect and Handle Outliers, ASQC Quality Press
 */
export function modifiedZ(
  values: readonly number[],
  { cut = MODIFIED_Z_CUT, resolution }: { cut?: number; resolution?: number } = {},
): ModifiedZ {
  requireSample('Modified z', values, 3);
  requirePositive('Modified z', 'cut', cut);
  if (resolution !== undefined) requirePositive('Modified z', 'resolution', resolution);
  const { median, mad } = medianAndDeviation(values);
  const meanDeviation = mean(values.map((value) => Math.abs(value - median)));
  const [scale, unit] = scaleOf(mad, meanDeviation, resolution);
  const scores = values.map((value) => (value - median) / unit);
  const outliers = scores.flatMap((score, index) => (Math.abs(score) > cut ? [index] : []));
  return { median, mad, madScaled: mad * MAD_TO_SD, scale, unit, scores, outliers };
}

function scaleOf(mad: number, meanDeviation: number, resolution: number | undefined): [RobustScale, number] {
  if (mad > 0) return ['median-absolute-deviation', mad / NORMAL_QUARTILE];
  if (meanDeviation > 0) return ['mean-absolute-deviation', meanDeviation * MEAN_DEVIATION_TO_SD];
  if (resolution !== undefined && resolution > 0) return ['resolution', resolution];
  throw new NoSpreadError('Modified z', 'Give the resolution of the instrument, or more varied data.');
}

/** The largest |z| that an ordinary score can reach in a sample of `n`: below 11 values it never exceeds 3. */
export const largestPossibleZ = (n: number): number => (n - 1) / Math.sqrt(n);
