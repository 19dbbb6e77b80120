import { requirePoints } from '../errors.js';
import { centroid, distance, minus, type Point } from '../point.js';
import { ellipses, FEWEST_FOR_ELLIPSE, type Covariance, type Ellipses } from './ellipse.js';

/** Where closures (taps) of one sitting fell; the same for any method of recording centric relation. */
export interface Closures {
  readonly n: number;
  readonly mean: Point;
  /** Root mean square distance from the mean, divisor n, mm. */
  readonly rmsMm: number;
  /** Largest distance between two closures, mm. */
  readonly maxPairMm: number;
  /** Divisor n - 1; null for a single closure. */
  readonly covariance: Covariance | null;
  /** Null below four closures: the region would say nothing. */
  readonly ellipses: Ellipses | null;
  /** Two groups apart from one another: the patient closes in two places. */
  readonly isDouble: boolean;
}

/** Two habits are told from scatter when the groups are this far apart, mm, and this many times their own spread. */
const APART_MM = 0.5;
const APART_SPREADS = 3;

/**
 * Splits closures at the widest gap along their major axis.
 * Two groups of two or more, far apart beside their own spread, are two places.
 */
function fallInTwo(points: readonly Point[], axisDeg: number): boolean {
  const angle = (axisDeg * Math.PI) / 180;
  const positions = points.map(({ x, y }) => x * Math.cos(angle) + y * Math.sin(angle)).sort((a, b) => a - b);
  const mean = (of: readonly number[]) => of.reduce((sum, value) => sum + value, 0) / of.length;
  const squares = (of: readonly number[]) => of.reduce((sum, value) => sum + (value - mean(of)) ** 2, 0);
  for (let cut = 2; cut <= positions.length - 2; cut++) {
    const [low, high] = [positions.slice(0, cut), positions.slice(cut)];
    const spread = Math.sqrt((squares(low) + squares(high)) / positions.length);
    const gap = mean(high) - mean(low);
    if (gap > APART_MM && gap > APART_SPREADS * spread && high[0]! - low.at(-1)! > APART_MM / 2) return true;
  }
  return false;
}

/**
 * Mean, scatter and ellipses of closure points, mm.
 *
 * @throws {TracingError} for no point, or one that is no pair of numbers
 */
export function closureStatistics(points: readonly Point[]): Closures {
  requirePoints('Closures', points, 1);
  const n = points.length;
  const mean = centroid(points);
  const away = points.map((point) => minus(point, mean));
  const sum = (of: (point: Point) => number) => away.reduce((total, point) => total + of(point), 0);
  const rmsMm = Math.sqrt(sum(({ x, y }) => x * x + y * y) / n);
  let maxPairMm = 0;
  for (let i = 1; i < n; i++)
    for (let j = 0; j < i; j++) maxPairMm = Math.max(maxPairMm, distance(points[i]!, points[j]!));
  const covariance =
    n < 2
      ? null
      : {
          xx: sum(({ x }) => x * x) / (n - 1),
          xy: sum(({ x, y }) => x * y) / (n - 1),
          yy: sum(({ y }) => y * y) / (n - 1),
        };
  const regions = covariance === null || n < FEWEST_FOR_ELLIPSE ? null : ellipses(covariance, n);
  const isDouble = regions !== null && fallInTwo(points, regions.axisDeg);
  return { n, mean, rmsMm, maxPairMm, covariance, ellipses: regions, isDouble };
}
