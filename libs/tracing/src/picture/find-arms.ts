import { intersect } from '../lines/line.js';
import { angleBetweenDeg, cross, dot, minus, type Point } from '../point.js';
import { findLines, type FoundLine } from './find-lines.js';
import type { RidgePoint } from './ridges.js';

export interface Ray {
  /** Unit, away from the apex. */
  readonly direction: Point;
  /** How far from the apex its first point lies, mm. */
  readonly beginsMm: number;
  /** Drawn without a long gap from the apex on, mm; no more than an arm can be. */
  readonly lengthMm: number;
  /** It runs on as no arm does, or bends as none. */
  readonly isNoArm: boolean;
  readonly points: readonly RidgePoint[];
}

export interface FoundArms {
  readonly apex: Point;
  readonly arms: readonly [Ray, Ray];
  readonly protrusive: Ray | null;
  /** What was followed, mm. */
  readonly score: number;
  /** Median strength of the ridge along the arms, grey levels: beside a line its own overshoot runs along, fainter. */
  readonly strength: number;
}

/** A ray is followed in steps of this over gaps up to that, mm. */
const STEP_MM = 0.2;
const GAP_MM = 1;
/** Arms begin this near the apex, are this long at least, and run on behind it this far at most, mm and share of the arm. */
const BEGINS_MM = 0.9;
/** The needle draws on from one arm into the other: where they run into one another, neither begins this much later, mm. */
const BEGINS_APART_MM = 0.5;
const SHORTEST_MM = 2.5;
const BEHIND_MM = 0.8;
const BEHIND_SHARE = 0.3;
const LONGEST_MM = 12;
/** What runs on straight for this long is the edge of a plate, a frame or a rule: no jaw moves so far. */
const EDGE_MM = 17;
/** An arm turns about a condyle: a line of less than this radius, mm, is a circle, a letter or a hair. */
const LEAST_RADIUS_MM = 30;
/** Of the middle of a line as it is found, mm. */
const SLACK_MM = 0.05;
const OPENING_DEG = [80, 168] as const;
/** What an opening of one degree is worth beside a millimetre of line: arms beat an arm and the protrusive path. */
const OPENING_WORTH = 0.02;

/** Two arms without what lies between them. */
type Corner = Omit<FoundArms, 'protrusive' | 'strength'>;

/** Follows a line from a point in a direction. */
function follow(points: readonly RidgePoint[], from: Point, direction: Point): Ray {
  const bins = new Uint8Array(Math.ceil(EDGE_MM / STEP_MM));
  const own: { s: number; point: RidgePoint }[] = [];
  for (const point of points) {
    const s = dot(minus(point, from), direction);
    if (s < 0 || s >= EDGE_MM) continue;
    bins[Math.floor(s / STEP_MM)] = 1;
    own.push({ s, point });
  }
  let last = -1;
  const mostGap = GAP_MM / STEP_MM;
  for (let bin = 0; bin < bins.length; bin++) {
    if (bins[bin] === 1) last = bin;
    else if (bin - last > (last < 0 ? BEGINS_MM / STEP_MM : mostGap)) break;
  }
  const isEdge = last >= bins.length - 1;
  const lengthMm = Math.min(LONGEST_MM, (last + 1) * STEP_MM);
  const onRay = own.filter(({ s }) => s <= lengthMm).sort((a, b) => a.s - b.s);
  return {
    direction,
    beginsMm: onRay[0]?.s ?? Infinity,
    lengthMm,
    isNoArm: isEdge || isBent(onRay, from, direction, lengthMm),
    points: onRay.map(({ point }) => point),
  };
}

/** Whether the middle third of a line lies too far off the chord of the outer ones. */
function isBent(
  onRay: readonly { readonly s: number; readonly point: RidgePoint }[],
  from: Point,
  direction: Point,
  lengthMm: number,
): boolean {
  const offsets = [0, 1, 2].map((third) => {
    const own = onRay.filter(({ s }) => Math.min(2, Math.floor((3 * s) / lengthMm)) === third);
    return own.reduce((sum, { point }) => sum + cross(direction, minus(point, from)), 0) / own.length;
  }) as [number, number, number];
  const sagittaMm = Math.abs(offsets[1] - (offsets[0] + offsets[2]) / 2);
  // The means of the thirds of an arc lie length² / 18 radius apart. An empty third compares as false: what is not seen
  // does not bend.
  return sagittaMm > lengthMm ** 2 / (18 * LEAST_RADIUS_MM) + SLACK_MM;
}

const turned = ({ x, y }: Point): Point => ({ x: -x, y: -y });

/** The longer of the two rays of a line from a point, and how far the line runs on behind. */
function rayOf({ line, points }: FoundLine, from: Point): { ray: Ray; behindMm: number } {
  const ahead = follow(points, from, line.direction);
  const behind = follow(points, from, turned(line.direction));
  return ahead.lengthMm >= behind.lengthMm
    ? { ray: ahead, behindMm: behind.lengthMm }
    : { ray: behind, behindMm: ahead.lengthMm };
}

const runsOn = ({ ray, behindMm }: { readonly ray: Ray; readonly behindMm: number }): boolean =>
  behindMm > Math.min(BEHIND_MM, BEHIND_SHARE * ray.lengthMm);

function armsAt(first: FoundLine, second: FoundLine): Corner | null {
  const apex = intersect(first.line, second.line);
  if (apex === null) return null;
  const one = rayOf(first, apex);
  const two = rayOf(second, apex);
  const shorter = Math.min(one.ray.lengthMm, two.ray.lengthMm);
  if (shorter < SHORTEST_MM || one.ray.isNoArm || two.ray.isNoArm) return null;
  if (runsOn(one) || runsOn(two)) return null;
  if (Math.abs(one.ray.beginsMm - two.ray.beginsMm) > BEGINS_APART_MM) return null;
  const opening = angleBetweenDeg(one.ray.direction, two.ray.direction);
  if (opening < OPENING_DEG[0] || opening > OPENING_DEG[1]) return null;
  const score =
    2 * shorter + 0.3 * (one.ray.lengthMm + two.ray.lengthMm) + OPENING_WORTH * opening - one.behindMm - two.behindMm;
  return { apex, arms: [one.ray, two.ray], score };
}

/** Between the arms and through the apex. */
function protrusiveBetween(lines: readonly FoundLine[], { apex, arms }: Corner): Ray | null {
  const opening = angleBetweenDeg(arms[0].direction, arms[1].direction);
  const rays = lines
    .filter(
      ({ line }) =>
        Math.abs(line.direction.x * (apex.y - line.through.y) - line.direction.y * (apex.x - line.through.x)) < 0.6,
    )
    .map((line) => rayOf(line, apex).ray)
    .filter(({ direction, lengthMm }) => {
      const [a, b] = arms.map((arm) => angleBetweenDeg(arm.direction, direction)) as [number, number];
      return lengthMm >= 1 && Math.min(a, b) > 20 && a + b < opening + 2;
    });
  return rays.sort((a, b) => b.lengthMm - a.lengthMm)[0] ?? null;
}

/**
 * Two arms that begin at one point and do not run on behind it: what a needle-point tracing looks like.
 *
 * @returns null when no two lines do
 */
export function findArms(points: readonly RidgePoint[]): FoundArms | null {
  const lines = findLines(points);
  let best: Corner | null = null;
  for (let i = 1; i < lines.length; i++) {
    for (let j = 0; j < i; j++) {
      const found = armsAt(lines[i]!, lines[j]!);
      if (found !== null && found.score > (best?.score ?? 0)) best = found;
    }
  }
  if (best === null) return null;
  const strengths = best.arms.flatMap((arm) => arm.points.map(({ strength }) => strength)).sort((a, b) => a - b);
  return { ...best, protrusive: protrusiveBetween(lines, best), strength: strengths[strengths.length >> 1]! };
}
