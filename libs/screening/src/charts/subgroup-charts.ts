import { mean } from 'simple-statistics';
import { NoSpreadError } from '../errors.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';
import { requireRows } from '../sample/sample.js';
import { chartConstants } from './chart-constants.js';

type Limits = readonly [lower: number, upper: number];

export interface SubgroupCharts {
  readonly grandMean: number;
  readonly meanRange: number;
  readonly meanDeviation: number;
  readonly meanLimitsFromRange: Limits;
  readonly rangeLimits: Limits;
  readonly meanLimitsFromDeviation: Limits;
  readonly deviationLimits: Limits;
  readonly sigmaFromRange: number;
  readonly sigmaFromDeviation: number;
}

/**
 * Charts of means, ranges and standard deviations of subgroups of one size.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.1; Montgomery, Introduction to Statistical Quality Control
 */
export function subgroupCharts(subgroups: readonly (readonly number[])[]): SubgroupCharts {
  const { A2, A3, B3, B4, D3, D4, c4, d2 } = chartConstants(requireRows('Subgroup charts', subgroups, 2));
  const grandMean = mean(subgroups.map((group) => mean([...group])));
  const meanRange = mean(subgroups.map((group) => Math.max(...group) - Math.min(...group)));
  const meanDeviation = mean(subgroups.map((group) => meanAndSpread(group).sd));
  if (meanRange === 0) throw new NoSpreadError('Subgroup charts');
  const around = (width: number): Limits => [grandMean - width, grandMean + width];
  return {
    grandMean,
    meanRange,
    meanDeviation,
    meanLimitsFromRange: around(A2 * meanRange),
    rangeLimits: [D3 * meanRange, D4 * meanRange],
    meanLimitsFromDeviation: around(A3 * meanDeviation),
    deviationLimits: [B3 * meanDeviation, B4 * meanDeviation],
    sigmaFromRange: meanRange / d2,
    sigmaFromDeviation: meanDeviation / c4,
  };
}
