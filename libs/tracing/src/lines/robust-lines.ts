import { requirePoints } from '../errors.js';
import type { Point } from '../point.js';
import type { SlopeLine } from './line.js';
import { ordinaryLeastSquares } from './ordinary-least-squares.js';

const residualsOf = ({ slope, intercept }: SlopeLine, points: readonly Point[]): number[] =>
  points.map(({ x, y }) => y - intercept - slope * x);
const ascending = (values: number[]): number[] => values.sort((a, b) => a - b);
function medianOf(values: readonly number[]): number {
  const sorted = ascending([...values]);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

function slopesFrom(points: readonly Point[], at: number): number[] {
  const { x, y } = points[at]!;
  return points.flatMap((other, index) => (index === at || other.x === x ? [] : [(other.y - y) / (other.x - x)]));
}

/**
 * Median over the points of the median slope to the others: half of the points may be wild.
 *
 * @see Siegel (1982), Robust regression using repeated medians, Biometrika 69:242-244
 */
export function repeatedMedianLine(points: readonly Point[]): SlopeLine {
  requirePoints('Repeated median', points, 3);
  const slope = medianOf(
    points.flatMap((_, at) => {
      const slopes = slopesFrom(points, at);
      return slopes.length === 0 ? [] : [medianOf(slopes)];
    }),
  );
  return { slope, intercept: medianOf(points.map(({ x, y }) => y - slope * x)) };
}

/** Rows that a high-breakdown fit rests on. */
const coreSize = (n: number): number => Math.floor((n + 3) / 2);

/** Every line through two points with different x. */
function* pairLines(points: readonly Point[]): Generator<SlopeLine> {
  for (let i = 1; i < points.length; i++) {
    for (let j = 0; j < i; j++) {
      const run = points[i]!.x - points[j]!.x;
      if (run === 0) continue;
      const slope = (points[i]!.y - points[j]!.y) / run;
      yield { slope, intercept: points[j]!.y - slope * points[j]!.x };
    }
  }
}

/** Middle of the shortest interval that holds `h` of the values, and half its width. */
function shortestHalf(values: number[], h: number): { middle: number; halfWidth: number } {
  const sorted = ascending(values);
  let from = 0;
  for (let at = 1; at + h <= sorted.length; at++) {
    if (sorted[at + h - 1]! - sorted[at]! < sorted[from + h - 1]! - sorted[from]!) from = at;
  }
  const [low, high] = [sorted[from]!, sorted[from + h - 1]!];
  return { middle: (low + high) / 2, halfWidth: (high - low) / 2 };
}

/**
 * Least median of squares over the slopes of all lines through two points, each with its best intercept.
 *
 * @see Rousseeuw (1984), Least median of squares regression, JASA 79:871-880
 */
export function leastMedianLine(points: readonly Point[]): SlopeLine {
  requirePoints('Least median of squares', points, 3);
  const h = Math.floor(points.length / 2) + 1;
  let best = { slope: 0, middle: 0, halfWidth: Infinity };
  for (const { slope } of pairLines(points)) {
    const found = shortestHalf(residualsOf({ slope, intercept: 0 }, points), h);
    if (found.halfWidth < best.halfWidth) best = { slope, ...found };
  }
  return { slope: best.slope, intercept: best.middle };
}

/** Least squares of the h points nearest to a line, again and again until they stay the same. */
function concentrate(points: readonly Point[], start: SlopeLine, h: number): { line: SlopeLine; objective: number } {
  let line = start;
  let objective = Infinity;
  for (;;) {
    const squares = residualsOf(line, points).map((residual) => residual * residual);
    const order = points.map((_, index) => index).sort((a, b) => squares[a]! - squares[b]!);
    const near = order.slice(0, h);
    const next = near.reduce((sum, index) => sum + squares[index]!, 0);
    if (!(next < objective - 1e-15)) return { line, objective };
    objective = next;
    line = ordinaryLeastSquares(near.map((index) => points[index]!));
  }
}

/**
 * Least trimmed squares: the line with the smallest sum of the h smallest squared residuals, concentrated from every
 * line through two points.
 *
 * @see Rousseeuw (1984), JASA 79:871-880; Rousseeuw & Van Driessen (2006), Computing LTS regression, Data Mining and
 *   Knowledge Discovery 12:29-45
 */
export function leastTrimmedLine(
  points: readonly Point[],
): SlopeLine & { readonly h: number; readonly objective: number } {
  requirePoints('Least trimmed squares', points, 4);
  const h = coreSize(points.length);
  let best = { line: { slope: 0, intercept: 0 }, objective: Infinity };
  for (const start of pairLines(points)) {
    const found = concentrate(points, start, h);
    if (found.objective < best.objective) best = found;
  }
  return { slope: best.line.slope, intercept: best.line.intercept, h, objective: best.objective };
}

/** Weighted least squares of vertical distances. */
function weightedLine(points: readonly Point[], weights: readonly number[]): SlopeLine {
  let [total, mx, my] = [0, 0, 0];
  points.forEach(({ x, y }, index) => {
    total += weights[index]!;
    mx += weights[index]! * x;
    my += weights[index]! * y;
  });
  mx /= total;
  my /= total;
  let [sxx, sxy] = [0, 0];
  points.forEach(({ x, y }, index) => {
    sxx += weights[index]! * (x - mx) ** 2;
    sxy += weights[index]! * (x - mx) * (y - my);
  });
  const slope = sxy / sxx;
  return { slope, intercept: my - slope * mx };
}

const CONVERGED = 1e-11;
const EXACT = 1e-12;
const MOST_ROUNDS = 1000;
const NORMAL_QUARTILE = 0.6745;

function reweight(
  points: readonly Point[],
  start: SlopeLine,
  weightsOf: (residuals: readonly number[]) => number[],
): SlopeLine {
  let line = start;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = weightedLine(points, weightsOf(residualsOf(line, points)));
    const isDone = Math.abs(next.slope - line.slope) + Math.abs(next.intercept - line.intercept) < CONVERGED;
    line = next;
    if (isDone) break;
  }
  return line;
}

/**
 * Huber's M-estimate, scale from the median absolute residual at each round. A wild point far out along the line
 * still pulls it.
 *
 * @see Huber (1981), Robust Statistics; k = 1.345 gives 95 % efficiency on normal data
 */
export function huberLine(points: readonly Point[], k = 1.345): SlopeLine {
  return reweight(points, ordinaryLeastSquares(points), (residuals) => {
    const scale = medianOf(residuals.map(Math.abs)) / NORMAL_QUARTILE;
    return residuals.map((residual) => Math.min(1, (k * scale) / Math.abs(residual || Number.MIN_VALUE)));
  });
}

/** Tuning of the bisquare: half the points may be wild in the scale; 95 % efficiency in the line. */
const SCALE_TUNING = 1.54764;
const LINE_TUNING = 4.685061;

const bisquareRho = (u: number): number => (Math.abs(u) >= 1 ? 1 : 1 - (1 - u * u) ** 3);
const bisquareWeight = (u: number): number => (Math.abs(u) >= 1 ? 0 : (1 - u * u) ** 2);

/** Scale at which the mean bisquare loss of the residuals is one half (degrees of freedom counted). */
function scaleOf(residuals: readonly number[]): number {
  let scale = medianOf(residuals.map(Math.abs)) / NORMAL_QUARTILE;
  for (let round = 0; round < MOST_ROUNDS && scale > 0; round++) {
    const loss = residuals.reduce((sum, residual) => sum + bisquareRho(residual / (SCALE_TUNING * scale)), 0);
    const next = scale * Math.sqrt(loss / (0.5 * (residuals.length - 2)));
    const isDone = Math.abs(next / scale - 1) < CONVERGED;
    scale = next;
    if (isDone) break;
  }
  return scale;
}

/**
 * MM-estimate: the line of smallest robust scale, made efficient with the scale kept.
 *
 * @see Yohai (1987), High breakdown-point and high efficiency robust estimates for regression, Annals of Statistics
 *   15:642-656
 */
export function mmLine(points: readonly Point[]): SlopeLine {
  requirePoints('MM line', points, 5);
  let best: { line: SlopeLine; scale: number } = { line: { slope: 0, intercept: 0 }, scale: Infinity };
  const refine = (line: SlopeLine) =>
    reweight(points, line, (residuals) => {
      const scale = scaleOf(residuals);
      return residuals.map((residual) => bisquareWeight(residual / (SCALE_TUNING * scale)));
    });
  for (const line of pairLines(points)) {
    const scale = scaleOf(residualsOf(line, points));
    if (scale < best.scale) best = { line, scale };
  }
  // More than half of the points lie exactly in one line: there is no scale to weigh the others by.
  if (best.scale < EXACT) return best.line;
  const line = refine(best.line);
  const scale = scaleOf(residualsOf(line, points));
  return reweight(points, line, (residuals) =>
    residuals.map((residual) => bisquareWeight(residual / (LINE_TUNING * scale))),
  );
}
