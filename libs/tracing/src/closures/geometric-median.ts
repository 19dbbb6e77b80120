import { requirePoints } from '../errors.js';
import { centroid, distance, length, minus, plus, type Point } from '../point.js';

export interface GeometricMedian {
  readonly point: Point;
  readonly sumOfDistances: number;
  /** Position, from 0, of the data point that is the optimum; null when none is. */
  readonly atDataPoint: number | null;
}

const MOST_ROUNDS = 10_000;

/** The pull of the other points on a data point; it is the optimum when they pull no harder than its own weight. */
function pullAt(points: readonly Point[], at: number): { pull: number; weight: number } {
  const here = points[at]!;
  let sum: Point = { x: 0, y: 0 };
  let weight = 0;
  for (const point of points) {
    const away = distance(point, here);
    if (away === 0) weight++;
    else sum = plus(sum, minus(point, here), 1 / away);
  }
  return { pull: length(sum), weight };
}

/**
 * The point with the smallest sum of distances to the points: a centre that a wild closure barely moves.
 *
 * @see Weiszfeld (1937), Tôhoku Mathematical Journal 43:355-386; optimality at a data point: Kuhn (1973), Mathematical
 *   Programming 4:98-107
 */
export function geometricMedian(points: readonly Point[]): GeometricMedian {
  requirePoints('Geometric median', points, 1);
  const sumFrom = (point: Point) => points.reduce((sum, other) => sum + distance(point, other), 0);
  const optimal = points.findIndex((_, at) => {
    const { pull, weight } = pullAt(points, at);
    return pull <= weight;
  });
  if (optimal >= 0) return { point: points[optimal]!, sumOfDistances: sumFrom(points[optimal]!), atDataPoint: optimal };
  let point = centroid(points);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let total = 0;
    let sum: Point = { x: 0, y: 0 };
    for (const other of points) {
      // A step that lands on a data point, which is not the optimum, is nudged off it.
      const weight = 1 / Math.max(distance(point, other), 1e-12);
      total += weight;
      sum = plus(sum, other, weight);
    }
    const next = { x: sum.x / total, y: sum.y / total };
    const step = distance(next, point);
    point = next;
    if (step < 1e-14) break;
  }
  return { point, sumOfDistances: sumFrom(point), atDataPoint: null };
}
