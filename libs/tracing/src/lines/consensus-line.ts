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
/** Of the two ways in which an offset is computed below. */
const SLACK = 1e-12;

/**
 * The line through two of the points that most points lie near: exhaustive over all pairs, so there is no luck in it.
 * Ties go to the smaller sum of squares.
 *
 * @param threshold orthogonal distance, in the points' unit
 * @see Fischler & Bolles (1981), Random sample consensus, Communications of the ACM 24:381-395
 */
export function consensusLine(points: readonly Point[], threshold: number): Consensus {
  requirePoints('Consensus line', points, 2);
  const xs = Float64Array.from(points, ({ x }) => x);
  const ys = Float64Array.from(points, ({ y }) => y);
  const stride = Math.max(1, points.length / MOST_POINTS);
  const basis = Array.from({ length: Math.min(points.length, MOST_POINTS) }, (_, at) => Math.floor(at * stride));
  let best = { count: 0, squares: Infinity, from: -1, to: -1 };
  // Plain numbers in the inner loop: it runs up to four million times.
  for (const from of basis) {
    for (const to of basis) {
      if (to >= from) break;
      const span = Math.hypot(xs[from]! - xs[to]!, ys[from]! - ys[to]!);
      if (span === 0) continue;
      const across = { x: (ys[to]! - ys[from]!) / span, y: (xs[from]! - xs[to]!) / span };
      const level = across.x * xs[from]! + across.y * ys[from]!;
      let count = 0;
      let squares = 0;
      for (let at = 0; at < xs.length; at++) {
        const offset = Math.abs(across.x * xs[at]! + across.y * ys[at]! - level);
        if (offset > threshold) continue;
        count++;
        squares += offset * offset;
      }
      if (count > best.count || (count === best.count && squares < best.squares)) best = { count, squares, from, to };
    }
  }
  // All points coincide: the fit below says so.
  if (best.from < 0) return { inliers: points.map((_, at) => at), line: totalLeastSquares(points) };
  const direction = unit(minus(points[best.from]!, points[best.to]!));
  const through = { through: points[best.to]!, direction };
  const inliers = points.flatMap((point, at) =>
    Math.abs(offsetFrom(through, point)) <= threshold + SLACK ? [at] : [],
  );
  return { inliers, line: totalLeastSquares(inliers.map((at) => points[at]!)) };
}
