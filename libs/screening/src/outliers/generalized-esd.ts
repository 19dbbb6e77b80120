import { tQuantile } from '../distribution/quantiles.js';
import { NoSpreadError } from '../errors.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';
import { requireBetween, requireSample, requireWhole } from '../sample/sample.js';

interface EsdStep {
  /** Position in the sample given, from 0, of the value removed at this step. */
  readonly index: number;
  readonly value: number;
  /** Its distance from the mean of what was left, in standard deviations of what was left. */
  readonly statistic: number;
  readonly critical: number;
}

export interface EsdTest {
  readonly steps: readonly EsdStep[];
  /** The largest step whose statistic exceeds its critical value: earlier ones may be masked. */
  readonly numberOfOutliers: number;
  readonly outliers: readonly EsdStep[];
}

/**
 * Generalised extreme studentised deviate test: up to `maxOutliers` outliers in a normal sample without masking.
 * A good approximation from 25 values on, usable from 15 (Rosner).
 *
 * @throws {NoSpreadError} when nothing varies before an outlier could be found
 * @see Rosner (1983), Percentage points for a generalized ESD many-outlier procedure, Technometrics 25:165-172;
 *   NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.3
 */
export function generalizedEsd(values: readonly number[], maxOutliers: number, alpha = 0.05): EsdTest {
  requireSample('Generalised ESD', values, 15);
  requireBetween('Generalised ESD', 'alpha', alpha, 0, 1);
  requireWhole('Generalised ESD', 'number of outliers', maxOutliers, 1, values.length - 3);
  const left = values.map((value, index) => ({ value, index }));
  const steps: EsdStep[] = [];
  for (let removed = 1; removed <= maxOutliers; removed++) {
    const { n, mean, sd } = meanAndSpread(left.map(({ value }) => value));
    // What is left after real outliers may be constant; only a sample that starts so can't be judged.
    if (sd === 0) break;
    let farthest = 0;
    for (let at = 1; at < n; at++) {
      if (Math.abs(left[at]!.value - mean) > Math.abs(left[farthest]!.value - mean)) farthest = at;
    }
    const [{ value, index }] = left.splice(farthest, 1) as [{ value: number; index: number }];
    const t = tQuantile(1 - alpha / (2 * n), n - 2);
    const critical = ((n - 1) * t) / Math.sqrt((n - 2 + t * t) * n);
    steps.push({ index, value, statistic: Math.abs(value - mean) / sd, critical });
  }
  if (steps.length === 0) throw new NoSpreadError('Generalised ESD');
  const numberOfOutliers = steps.findLastIndex(({ statistic, critical }) => statistic > critical) + 1;
  return { steps, numberOfOutliers, outliers: steps.slice(0, numberOfOutliers) };
}
