import { OptionError } from '../errors.js';
import { requirePairs } from '../sample/sample.js';

export interface ShrunkMeans {
  /** Variance between the groups' true means; zero is a legitimate answer. */
  readonly betweenVariance: number;
  /** Mean over the groups, each weighted by what it tells. */
  readonly mean: number;
  readonly seMean: number;
  /** Each group's mean drawn toward the overall one, the more the less the group tells. */
  readonly shrunk: readonly number[];
}

/**
 * Means of groups of different size, drawn toward the overall mean: the rule for a clinic with few cases.
 *
 * @param means one per group
 * @param variances sampling variance of each mean, above 0
 * @see DerSimonian & Laird (1986), Meta-analysis in clinical trials, Controlled Clinical Trials 7:177-188
 */
export function shrinkMeans(means: readonly number[], variances: readonly number[]): ShrunkMeans {
  requirePairs('Shrinkage', means, variances, 2);
  for (const variance of variances) {
    if (variance <= 0) throw new OptionError('Shrinkage', 'variance', variance, 'a number above 0');
  }
  const weighted = (weights: readonly number[]) => {
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    return { total, mean: weights.reduce((sum, weight, index) => sum + weight * means[index]!, 0) / total };
  };
  const fixedWeights = variances.map((variance) => 1 / variance);
  const fixed = weighted(fixedWeights);
  const heterogeneity = fixedWeights.reduce((sum, w, index) => sum + w * (means[index]! - fixed.mean) ** 2, 0);
  const scale = fixed.total - fixedWeights.reduce((sum, w) => sum + w * w, 0) / fixed.total;
  const betweenVariance = Math.max(0, (heterogeneity - (means.length - 1)) / scale);
  const overall = weighted(variances.map((variance) => 1 / (variance + betweenVariance)));
  return {
    betweenVariance,
    mean: overall.mean,
    seMean: 1 / Math.sqrt(overall.total),
    shrunk: means.map((value, index) => {
      const variance = variances[index]!;
      return (value * betweenVariance + overall.mean * variance) / (betweenVariance + variance);
    }),
  };
}
