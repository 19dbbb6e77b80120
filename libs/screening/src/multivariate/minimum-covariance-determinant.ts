import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf';
import { seededRandom } from '@archwright/kernel';
import { Matrix, solve } from 'ml-matrix';
import { chiSquareQuantile } from '../distribution/quantiles.js';
import { NoSpreadError, OptionError, TooFewValuesError } from '../errors.js';
import { requireAtMost, requireBetween, requireRows, requireWhole } from '../sample/sample.js';
import { bestSubset, type BestSubset } from './best-subset.js';
import { distancesFrom, type MahalanobisDistances } from './mahalanobis.js';
import { centreAndScatter } from './scatter.js';

export interface RobustDistances extends MahalanobisDistances {
  /** The h rows on which the first estimate rests. */
  readonly best: BestSubset;
}

/** Makes the covariance of the central share of normal data consistent. */
function consistency(width: number, share: number): number {
  if (share >= 1) return 1;
  return share / chiSquareCdf(chiSquareQuantile(share, width), width + 2);
}

/**
 * Simulated curves `1 - exp(a) / n^b` of the bias in small samples, at trimming 0.5 and 0.875; for three columns and
 * more through two anchors, each a power of the number of columns.
 *
 * @see Pison, Van Aelst & Willems (2002), Small sample corrections for LTS and MCD, Metrika 55:111-123; figures from
 *   memory of the published implementation, confirmed to six digits by the test
 */
interface BiasCurves {
  readonly one: readonly [half: readonly [number, number], most: readonly [number, number]];
  readonly two: readonly [half: readonly [number, number], most: readonly [number, number]];
  readonly many: readonly [half: readonly Anchor[], most: readonly Anchor[]];
}
type Anchor = readonly [scale: number, power: number, multiple: number];

const RAW: BiasCurves = {
  one: [
    [0.262024211897096, 0.604756680630497],
    [-0.351584646688712, 1.01646567502486],
  ],
  two: [
    [0.673292623522027, 0.691365864961895],
    [0.446537815635445, 1.06690782995919],
  ],
  many: [
    [
      [1.42764571687802, 1.26263336932151, 2],
      [1.06141115981725, 1.28907991440387, 3],
    ],
    [
      [0.455179464070565, 1.11192541278794, 2],
      [0.294241208320834, 1.09649329149811, 3],
    ],
  ],
};
const REWEIGHTED: BiasCurves = {
  one: [
    [1.11098143415027, 1.5182890270453],
    [-0.66046776772861, 0.88939595831888],
  ],
  two: [
    [3.11101712909049, 1.91401056721863],
    [0.79473550581058, 1.10081930350091],
  ],
  many: [
    [
      [1.02842572724793, 1.67659883081926, 2],
      [0.26800273450853, 1.35968562893582, 3],
    ],
    [
      [0.544482443573914, 1.25994483222292, 2],
      [0.343791072183285, 1.25159004257133, 3],
    ],
  ],
};

function curveOf(anchors: readonly Anchor[], width: number): readonly [number, number] {
  const logs = anchors.map(([scale, power]) => Math.log(scale / width ** power));
  const system = new Matrix(anchors.map(([, , multiple]) => [1, -Math.log(multiple * width * width)]));
  const [a, b] = solve(system, Matrix.columnVector(logs)).getColumn(0) as [number, number];
  return [a, b];
}

function smallSampleFactor(curves: BiasCurves, width: number, n: number, share: number): number {
  const [half, most] =
    width === 1 ? curves.one : width === 2 ? curves.two : curves.many.map((anchors) => curveOf(anchors, width));
  const at = ([a, b]: readonly [number, number]) => 1 - Math.exp(a) / n ** b;
  const atHalf = at(half);
  const atMost = at(most);
  const bias =
    share <= 0.875
      ? atHalf + ((atMost - atHalf) / 0.375) * (share - 0.5)
      : atMost + ((1 - atMost) / 0.125) * (share - 0.875);
  return 1 / bias;
}

/** Of ordinary rows within the first distances: they are weighted one, the others nothing. */
const WEIGHTED_SHARE = 0.975;
/** Project limit: beyond, the search takes minutes. */
const MOST_ROWS = 20_000;

/** How many rows the first estimate rests on: half and a little at share 0.5, all at share 1. */
function coreSize(n: number, width: number, share: number): number {
  const half = Math.floor((n + width + 1) / 2);
  return Math.floor(2 * half - n + 2 * (n - half) * share);
}

/**
 * Robust centre, scatter and distances by the minimum covariance determinant with one reweighting step: up to
 * `1 - share` of the rows may be wild, in groups or alone.
 *
 * @param share of the rows trusted, from 0.5 (most robust) to 1
 * @param quantile share of ordinary rows within the cut-off
 * @param seed of the random starts where subsets are too many to try all
 * @throws {TooFewValuesError} below two rows per column (and five rows)
 * @throws {NoSpreadError} when the rows lie in a plane
 * @see Rousseeuw (1985), Multivariate estimation with high breakdown point; Rousseeuw & Van Driessen (1999),
 *   Technometrics 41:212-223
 */
export function minimumCovarianceDeterminant(
  rows: readonly (readonly number[])[],
  { share = 0.5, seed = 1, quantile = 0.975 }: { share?: number; seed?: number; quantile?: number } = {},
): RobustDistances {
  const method = 'Minimum covariance determinant';
  const width = requireRows(method, rows, 5);
  const n = rows.length;
  if (n < 2 * width) throw new TooFewValuesError(method, n, 2 * width, 'rows');
  requireAtMost(method, n, MOST_ROWS, 'rows');
  requireBetween(method, 'quantile', quantile, 0, 1);
  requireWhole(method, 'seed', seed, 0, 0xffff_ffff);
  if (!(share >= 0.5 && share <= 1)) throw new OptionError(method, 'share', share, 'a number from 0.5 to 1');
  const h = coreSize(n, width, share);
  const best = bestSubset(rows, h, seededRandom(seed));
  if (!(best.determinant > 0)) {
    throw new NoSpreadError(method, `${String(h)} of the rows lie in a plane: leave a column out.`);
  }
  const raw = centreAndScatter(rows, best.subset);
  const rawFactor = consistency(width, h / n) * smallSampleFactor(RAW, width, n, share);
  const rawDistances = distancesFrom(method, rows, {
    centre: raw.centre,
    covariance: Matrix.mul(raw.covariance, rawFactor),
  });
  // The weights keep their own cut, for which the factors were simulated.
  const weighted = Math.sqrt(chiSquareQuantile(WEIGHTED_SHARE, width));
  const cutoff = Math.sqrt(chiSquareQuantile(quantile, width));
  const trusted = rawDistances.flatMap((distance, index) => (distance < weighted ? [index] : []));
  const reweighted = centreAndScatter(rows, trusted);
  const factor = consistency(width, trusted.length / n) * smallSampleFactor(REWEIGHTED, width, n, share);
  const covariance = Matrix.mul(reweighted.covariance, factor);
  const distances = distancesFrom(method, rows, { centre: reweighted.centre, covariance });
  return {
    best,
    centre: reweighted.centre,
    covariance,
    distances,
    cutoff,
    outliers: distances.flatMap((distance, index) => (distance > cutoff ? [index] : [])),
  };
}
