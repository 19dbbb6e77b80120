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
export type Drawing = Readonly<Record<Phase, readonly Point[]>>;

/** The hand can't draw finer, and the fits gain nothing from denser points. */
const THINNED_MM = 0.05;
/** A movement of the lower jaw never reaches this far; centimetres or pixels do. */
const LARGEST_MM = 40;
/** Three points are a line and a doubt. */
const FEWEST_PER_ARM = 3;

/** +1 or -1 for each axis between the plate as given and the evaluation's frame; its own inverse. */
export function signsOf({ stylusOn, view }: Pick<TracingInput, 'stylusOn' | 'view'>): Point {
  const turn = stylusOn === 'upper' ? -1 : 1;
  return { x: view === 'mirrored' ? -turn : turn, y: turn };
}

/** Leaves out points that lie within reach of the one kept before. */
function thinned(points: readonly Point[], reach: number): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (last === undefined || distance(last, point) >= reach) kept.push(point);
  }
  return kept;
}

function requireMillimetres(points: readonly Point[]): void {
  const size = Math.max(
    Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x)),
    Math.max(...points.map(({ y }) => y)) - Math.min(...points.map(({ y }) => y)),
  );
  if (size > LARGEST_MM) {
    const message = `The tracing spans ${size.toFixed(0)} mm; a jaw moves up to ${String(LARGEST_MM)} mm. Are these pixels? Give the scale, or points in mm.`;
    throw new TracingError('unit', message, { spanMm: size });
  }
  if (size < 1) {
    const message = `The tracing spans ${size.toFixed(2)} mm. Are these centimetres? Give points in mm; a tracing below 1 mm cannot be evaluated.`;
    throw new TracingError('unit', message, { spanMm: size });
  }
}

/**
 * @throws {TracingError} `too-few-points` for an arm of fewer than three points, `not-a-number`, or `unit` when the
 *   points cannot be millimetres
 */
export function toDrawing(input: TracingInput): Drawing {
  requirePoints('Tracing', input.points, 2 * FEWEST_PER_ARM);
  requireMillimetres(input.points.filter(({ phase }) => phase !== 'closure'));
  const sign = signsOf(input);
  const of = (phase: Phase) =>
    input.points.filter((point) => point.phase === phase).map(({ x, y }) => ({ x: sign.x * x, y: sign.y * y }));
  const drawing: Drawing = {
    right: thinned(of('right'), THINNED_MM),
    left: thinned(of('left'), THINNED_MM),
    protrusive: thinned(of('protrusive'), THINNED_MM),
    // Taps may fall on one another: each counts.
    closure: of('closure'),
  };
  requirePoints('Right arm', drawing.right, FEWEST_PER_ARM);
  requirePoints('Left arm', drawing.left, FEWEST_PER_ARM);
  return drawing;
}
