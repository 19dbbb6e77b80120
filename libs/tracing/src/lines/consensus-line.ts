import { requirePoints } from '../errors.js';
import { minus, unit, type Point } from '../point.js';
import { offsetFrom, totalLeastSquares, type Line } from './line.js';

export interface Consensus {
  /** Positions, from 0, within the threshold of the best line through a pair. */
  readonly inliers: readonly number[];
  /** Total least squares of the inliers. */
  readonly line: Line;
}

/** Above this many points the pairs are taken from an even choice of them: 200 points are 19,900 lines. */
const MOST_POINTS = 200;

/**
 * The line through two of the points that most points lie near: exhaustive over all pairs, so there is no luck in it.
 * Ties go to the smaller sum of squares.
 *
 * @param threshold orthogonal distance, in the points' unit
 * @see Fischler & Bolles (1981), Random sample consensus, Communications of the ACM 24:381-395
 */
export function consensusLine(points: readonly Point[], threshold: number): Consensus {
  requirePoints('Consensus line', points, 2);
  const stride = Math.max(1, points.length / MOST_POINTS);
  const basis = Array.from(
    { length: Math.min(points.length, MOST_POINTS) },
    (_, at) => points[Math.floor(at * stride)]!,
  );
  let best: { count: number; squares: number; line: Line } | null = null;
  for (let i = 1; i < basis.length; i++) {
    for (let j = 0; j < i; j++) {
      const span = minus(basis[i]!, basis[j]!);
      if (span.x === 0 && span.y === 0) continue;
      const line = { through: basis[j]!, direction: unit(span) };
      let [count, squares] = [0, 0];
      for (const point of points) {
        const offset = Math.abs(offsetFrom(line, point));
        if (offset > threshold) continue;
        count++;
        squares += offset * offset;
      }
      if (best === null || count > best.count || (count === best.count && squares < best.squares)) {
        best = { count, squares, line };
      }
    }
  }
  // All points coincide: the fit below says so.
  const line = best?.line;
  const inliers = points.flatMap((point, index) =>
    line === undefined || Math.abs(offsetFrom(line, point)) <= threshold ? [index] : [],
  );
  return { inliers, line: totalLeastSquares(inliers.map((index) => points[index]!)) };
}
