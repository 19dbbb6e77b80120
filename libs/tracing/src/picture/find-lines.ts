import { offsetFrom, totalLeastSquares, type Line } from '../lines/line.js';
import { toDegrees, toRadians } from '../point.js';
import type { RidgePoint } from './ridges.js';

export interface FoundLine {
  readonly line: Line;
  /** All that lie along it, of other lines too. */
  readonly points: readonly RidgePoint[];
}

const ANGLE_BINS = 180;
const RHO_MM = 0.15;
/** A point votes for lines within this of its own direction, degrees. */
const VOTE_REACH = 4;
/** A point belongs to a line within this, mm and degrees: an arm is an arc of some 100 mm radius. */
const NEAR_MM = 0.3;
const ALONG_DEG = 15;
const MOST_LINES = 12;
const FEWEST_POINTS = 25;

/** Unsigned difference of two directions in [0, 180). */
const directionGap = (a: number, b: number): number => {
  const gap = Math.abs(a - b) % 180;
  return Math.min(gap, 180 - gap);
};

const directionOfLine = ({ direction }: Line): number => (toDegrees(Math.atan2(direction.y, direction.x)) + 360) % 180;

/** The points that lie along a line. */
function pointsAlong(line: Line, points: Iterable<RidgePoint>): RidgePoint[] {
  const direction = directionOfLine(line);
  const own: RidgePoint[] = [];
  for (const point of points) {
    if (directionGap(direction, point.directionDeg) > ALONG_DEG) continue;
    if (Math.abs(offsetFrom(line, point)) <= NEAR_MM) own.push(point);
  }
  return own;
}

/**
 * Straight lines among ridge points, the longest first: votes by each point's own direction, then least squares of
 * what lies near; its points no longer vote.
 *
 * @see Duda & Hart (1972), Use of the Hough transformation to detect lines and curves, Comm. ACM 15:11-15
 */
export function findLines(points: readonly RidgePoint[]): FoundLine[] {
  if (points.length < FEWEST_POINTS) return [];
  const reach = points.reduce((most, { x, y }) => Math.max(most, Math.hypot(x, y)), 0);
  const rhoBins = 2 * Math.ceil(reach / RHO_MM) + 3;
  const votes = new Int32Array(ANGLE_BINS * rhoBins);
  const vote = (point: RidgePoint, amount: 1 | -1) => {
    for (let step = -VOTE_REACH; step <= VOTE_REACH; step++) {
      const bin = (Math.round(point.directionDeg) + step + 2 * ANGLE_BINS) % ANGLE_BINS;
      const angle = toRadians(bin);
      const rho = -point.x * Math.sin(angle) + point.y * Math.cos(angle);
      votes[bin * rhoBins + Math.round(rho / RHO_MM) + Math.ceil(reach / RHO_MM) + 1]! += amount;
    }
  };
  for (const point of points) vote(point, 1);
  const left = new Set(points);
  const found: FoundLine[] = [];
  while (found.length < MOST_LINES) {
    let best = 0;
    for (let at = 1; at < votes.length; at++) if (votes[at]! > votes[best]!) best = at;
    if (votes[best]! < FEWEST_POINTS) break;
    const angle = toRadians(Math.floor(best / rhoBins));
    const rho = ((best % rhoBins) - Math.ceil(reach / RHO_MM) - 1) * RHO_MM;
    const direction = { x: Math.cos(angle), y: Math.sin(angle) };
    let line: Line = { through: { x: -rho * direction.y, y: rho * direction.x }, direction };
    const rough = pointsAlong(line, left);
    if (rough.length >= FEWEST_POINTS) line = totalLeastSquares(rough);
    const own = pointsAlong(line, left);
    // Where lines cross, a point is on both.
    if (own.length >= FEWEST_POINTS) found.push({ line, points: pointsAlong(line, points) });
    const spent = own.length > 0 ? own : rough;
    for (const point of spent) {
      vote(point, -1);
      left.delete(point);
    }
    // A peak that no point belongs to would be found for ever.
    if (spent.length === 0) votes[best] = 0;
  }
  return found;
}
