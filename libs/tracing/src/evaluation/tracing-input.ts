import { requirePoints, TracingError } from '../errors.js';
import { distance, type Point } from '../point.js';

export const PHASES = ['right', 'left', 'protrusive', 'closure'] as const;
/** Movement during which a point was drawn; `closure` are the taps into the tracing. */
export type Phase = (typeof PHASES)[number];

/** One point in the order in which it was drawn, mm. */
export interface TracedPoint extends Point {
  readonly phase: Phase;
}

export interface TracingInput {
  readonly points: readonly TracedPoint[];
  /** Jaw that carries the needle. A needle on the upper jaw draws the picture turned by half a turn. */
  readonly stylusOn: 'lower' | 'upper';
  /** `mirrored`: x is to the patient's left, as in a picture of an upper plate from below. */
  readonly view: 'as-worn' | 'mirrored';
}

/** Points by phase, in the frame of a needle on the lower jaw: x to the patient's right, y forward, arms forward of the apex. */
export interface Drawing extends Readonly<Record<Phase, readonly Point[]>> {
  /** Where the frame's zero lies on the plate as worn: amid the arms, so that no digit is lost to a far origin. */
  readonly origin: Point;
}

/** The hand can't draw finer, and the fits gain nothing from denser points, nor from more of them along one arm. */
const THINNED_MM = 0.05;
const MOST_PER_PATH = 1_500;
/** A digitiser's minute; more are refused unread. */
const MOST_POINTS = 50_000;
/** A movement of the lower jaw never reaches this far; pixels do. */
const LARGEST_MM = 40;
/** Arms of one millimetre are no tracing; one of usual size in centimetres is about as small. */
const SMALLEST_MM = 2;
/** Share of the points at either end that may be wild when the size is judged. */
const WILD_SHARE = 0.05;
/** Three points are a line and a doubt. */
const FEWEST_PER_ARM = 3;

const mirrorOf = ({ view }: Pick<TracingInput, 'view'>): 1 | -1 => (view === 'mirrored' ? -1 : 1);
/** The evaluation's frame against the plate as worn: turned by half for a needle on the upper jaw. */
export const turnOf = ({ stylusOn }: Pick<TracingInput, 'stylusOn'>): 1 | -1 => (stylusOn === 'upper' ? -1 : 1);

/** Leaves out points that lie within reach of the one kept before, then evenly until few enough are left. */
function thinned(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (last === undefined || distance(last, point) >= THINNED_MM) kept.push(point);
  }
  const stride = kept.length / MOST_PER_PATH;
  return stride <= 1 ? kept : Array.from({ length: MOST_PER_PATH }, (_, at) => kept[Math.floor(at * stride)]!);
}

/** Extent in the longer of both directions, a few wild points left out; and the middle of the points. */
function sizeOf(points: readonly Point[]): { sizeMm: number; middle: Point } {
  const wild = Math.floor(WILD_SHARE * points.length);
  const [x, y] = (['x', 'y'] as const).map((axis) => {
    const ascending = points.map((point) => point[axis]).sort((a, b) => a - b);
    const [low, high] = [ascending[wild]!, ascending[ascending.length - 1 - wild]!];
    return { extent: high - low, middle: (low + high) / 2 };
  }) as [{ extent: number; middle: number }, { extent: number; middle: number }];
  return { sizeMm: Math.max(x.extent, y.extent), middle: { x: x.middle, y: y.middle } };
}

function requireMillimetres(sizeMm: number, middle: Point, closures: readonly Point[]): void {
  if (sizeMm > LARGEST_MM) {
    const message = `The tracing spans ${sizeMm.toFixed(0)} mm; a jaw moves up to ${String(LARGEST_MM)} mm. Are these pixels? Give the scale, or points in mm.`;
    throw new TracingError('unit', message, { spanMm: sizeMm });
  }
  if (sizeMm < SMALLEST_MM) {
    const message = `The tracing spans ${sizeMm.toFixed(2)} mm. Are these centimetres? Give points in mm; a tracing below ${String(SMALLEST_MM)} mm cannot be evaluated: trace again.`;
    throw new TracingError('unit', message, { spanMm: sizeMm });
  }
  const far = closures.find((closure) => distance(closure, middle) > LARGEST_MM);
  if (far !== undefined) {
    const message = `A closure lies ${distance(far, middle).toFixed(0)} mm from the tracing. Accepted: arms and closures in mm, from one zero.`;
    throw new TracingError('unit', message, { awayMm: distance(far, middle) });
  }
}

/** @throws {TracingError} `too-few-points` where the points fall on fewer places than an arm needs */
function requirePlaces(what: string, points: readonly Point[]): void {
  const places = new Set(
    points.map(({ x, y }) => `${String(Math.round(x / THINNED_MM))} ${String(Math.round(y / THINNED_MM))}`),
  );
  if (places.size >= FEWEST_PER_ARM) return;
  throw new TracingError(
    'too-few-points',
    `${what}: all points fall on ${String(places.size)} places, at least ${String(FEWEST_PER_ARM)} are needed.`,
    { what, given: places.size, needed: FEWEST_PER_ARM },
  );
}

/**
 * @throws {TracingError} `too-few-points` for an arm of fewer than three places, `too-many-points`, `not-a-number`, or
 *   `unit` when the points cannot be millimetres
 */
export function toDrawing(input: TracingInput): Drawing {
  requirePoints('Tracing', input.points, 2 * FEWEST_PER_ARM);
  if (input.points.length > MOST_POINTS) {
    const message = `${String(input.points.length)} points are given. Accepted: up to ${String(MOST_POINTS)}; take every tenth.`;
    throw new TracingError('too-many-points', message, { given: input.points.length, most: MOST_POINTS });
  }
  const given = (phase: Phase) => input.points.filter((point) => point.phase === phase);
  requirePoints('Right arm', given('right'), FEWEST_PER_ARM);
  requirePoints('Left arm', given('left'), FEWEST_PER_ARM);
  const { sizeMm, middle } = sizeOf([...given('right'), ...given('left'), ...given('protrusive')]);
  requireMillimetres(sizeMm, middle, given('closure'));
  const [turn, mirror] = [turnOf(input), mirrorOf(input)];
  const inFrame = (phase: Phase): Point[] =>
    given(phase).map(({ x, y }) => ({ x: turn * mirror * (x - middle.x), y: turn * (y - middle.y) }));
  const drawing: Drawing = {
    right: thinned(inFrame('right')),
    left: thinned(inFrame('left')),
    protrusive: thinned(inFrame('protrusive')),
    // Taps may fall on one another: each counts.
    closure: inFrame('closure'),
    origin: { x: mirror * middle.x, y: middle.y },
  };
  requirePlaces('Right arm', drawing.right);
  requirePlaces('Left arm', drawing.left);
  return drawing;
}
