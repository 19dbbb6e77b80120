import { TracingError } from '../errors.js';
import type { TracedPoint, TracingInput } from '../evaluation/tracing-input.js';
import { angleBetweenDeg, cross, distance, dot, minus, plus, toRadians, unit, type Point } from '../point.js';
import { findArms, type FoundArms, type Ray } from './find-arms.js';
import { requirePictureSize, type GrayPicture } from './gray-picture.js';
import type { PlaneMap } from './homography.js';
import { rectify, shownBy, type PlatePicture } from './rectify.js';
import { findRidges, flattened, flattenedBeside, type Polarity, type RidgePoint } from './ridges.js';

/** Widths of a drawn line that are looked for, mm: a scratch in lacquer, a pencil, a worn crayon. */
const LINE_WIDTHS_MM = [0.2, 0.35, 0.6];
/**
 * Nearer to the apex the drawn lines run into one another, and the middle that is found belongs to neither: how round the
 * apex is does not show in a picture, and is not answered. They are apart for certain where as many widths of the line
 * that was looked for lie between their middles; found on pictures whose truth is known.
 */
const MERGED_MM = 0.5;
const APART_WIDTHS = 2.4;
/** Another look moves the apex by less. */
const SAME_APEX_MM = 0.5;
const POLARITIES: readonly Polarity[] = ['bright', 'dark'];

interface SeenArms extends FoundArms {
  readonly polarity: Polarity;
  /** Of the lines that were looked for. */
  readonly widthMm: number;
  readonly ridges: readonly RidgePoint[];
}

/** Middles of the lines of one width that the picture shows of a flattened plate. */
type Look = (flat: PlatePicture, widthMm: number) => Readonly<Record<Polarity, readonly RidgePoint[]>>;

/** Long and clear. */
const worthOf = ({ score, strength }: FoundArms): number => score * strength;

export interface PlateReading {
  /** What {@link evaluateTracing} takes: points of the arms found, mm. */
  readonly input: TracingInput;
  /** From the plate as worn, as evaluations give it, to the picture as given, pixels. */
  readonly toPicture: (point: Point) => Point;
  /** Whether the lines are brighter or darker than the plate. */
  readonly polarity: Polarity;
}

/**
 * Finds the traced lines on a picture of the plate. The picture's up is the patient's forward, turned by quarters
 * where the arms lead elsewhere; its right is the patient's right, or left in a mirrored view.
 *
 * @throws {TracingError} `tracing.no-tracing` when no two arms meet in an apex: nothing is guessed; `tracing.picture-size`
 */
export function readPlate(
  picture: GrayPicture,
  map: PlaneMap,
  of: Pick<TracingInput, 'stylusOn' | 'view'>,
): PlateReading {
  requirePictureSize(picture);
  const plate = rectify(picture, map);
  const look: Look = (flat, widthMm) => {
    const isShown = shownBy(picture, map, widthMm);
    const { bright, dark } = findRidges(flat, widthMm);
    return { bright: bright.filter(isShown), dark: dark.filter(isShown) };
  };
  const best = clearestArms(flattened(plate), look);
  if (best === null) {
    throw new TracingError(
      'no-tracing',
      'No tracing was found in the picture: two lines that begin at one point and run 2.5 mm or more. Check the scale, ' +
        'cut the plate out, use even light, or digitise the points by hand.',
    );
  }
  return readingOf(seenAgain(plate, best, look), map, of);
}

/** Of lines of all widths, bright and dark. */
function clearestArms(flat: PlatePicture, look: Look): SeenArms | null {
  let best: SeenArms | null = null;
  for (const widthMm of LINE_WIDTHS_MM) {
    const ridges = look(flat, widthMm);
    for (const polarity of POLARITIES) {
      const found = findArms(ridges[polarity]);
      if (found === null || (best !== null && worthOf(found) <= worthOf(best))) continue;
      best = { ...found, polarity, widthMm, ridges: ridges[polarity] };
    }
  }
  return best;
}

/** The same arms where they lie when no line has a share in the background; as first seen where they are lost by it. */
function seenAgain(plate: PlatePicture, seen: SeenArms, look: Look): SeenArms {
  const { widthMm, polarity } = seen;
  const ridges = look(flattenedBeside(plate, seen.ridges, widthMm), widthMm)[polarity];
  const found = findArms(ridges);
  return found === null || distance(found.apex, seen.apex) > SAME_APEX_MM ? seen : { ...seen, ...found, ridges };
}

/** Quarter turn that brings the bisector of the arms nearest to where it belongs. */
function quarterTurn({ arms }: FoundArms, stylusOn: TracingInput['stylusOn']): (point: Point) => Point {
  const bisector = unit(plus(arms[0].direction, arms[1].direction));
  // The picture's y runs down; arms of a needle on the lower jaw lead forward, which is up.
  const wanted = { x: 0, y: stylusOn === 'lower' ? -1 : 1 };
  const turns: ((point: Point) => Point)[] = [
    (point) => point,
    ({ x, y }) => ({ x: y, y: -x }),
    ({ x, y }) => ({ x: -x, y: -y }),
    ({ x, y }) => ({ x: -y, y: x }),
  ];
  return turns.reduce((best, turn) => (dot(turn(bisector), wanted) > dot(best(bisector), wanted) + 1e-9 ? turn : best));
}

/** How far from the apex a drawn line runs into the one beside it, mm. */
function mergedMm(ray: Ray, { arms, protrusive, widthMm }: SeenArms): number {
  const angles = [...arms, protrusive].flatMap((other) =>
    other === null || other === ray ? [] : [angleBetweenDeg(ray.direction, other.direction)],
  );
  return Math.max(MERGED_MM, (APART_WIDTHS * widthMm) / (2 * Math.sin(toRadians(Math.min(...angles)) / 2)));
}

function readingOf(
  found: SeenArms,
  map: PlaneMap,
  { stylusOn, view }: Pick<TracingInput, 'stylusOn' | 'view'>,
): PlateReading {
  const turn = quarterTurn(found, stylusOn);
  const inverse = inverseOf(turn);
  // About the apex, so that no coordinate is far from the tracing.
  const toFrame = (point: Point): Point => {
    const { x, y } = turn(minus(point, found.apex));
    return { x, y: -y };
  };
  const fromFrame = ({ x, y }: Point): Point => plus(found.apex, inverse({ x, y: -y }));
  const sign = (view === 'mirrored' ? -1 : 1) * (stylusOn === 'upper' ? -1 : 1);
  const [one, two] = found.arms.map(({ direction }) => toFrame(plus(found.apex, direction))) as [Point, Point];
  const isOneRight = sign * one.x > sign * two.x;
  const phased = (ray: Ray | null, phase: TracedPoint['phase']): TracedPoint[] => {
    if (ray === null) return [];
    const fromMm = mergedMm(ray, found);
    return ray.points
      .filter((point) => distance(point, found.apex) >= fromMm)
      .map((point) => ({ ...toFrame(point), phase }));
  };
  return {
    input: {
      stylusOn,
      view,
      points: [
        ...phased(found.arms[isOneRight ? 0 : 1], 'right'),
        ...phased(found.arms[isOneRight ? 1 : 0], 'left'),
        ...phased(found.protrusive, 'protrusive'),
      ],
    },
    toPicture: ({ x, y }) => map.toPicture(fromFrame({ x: view === 'mirrored' ? -x : x, y })),
    polarity: found.polarity,
  };
}

/** Inverse of a quarter turn, from what it does to the axes. */
function inverseOf(turn: (point: Point) => Point): (point: Point) => Point {
  const [x, y] = [turn({ x: 1, y: 0 }), turn({ x: 0, y: 1 })];
  const determinant = cross(x, y);
  return (point) => ({ x: cross(point, y) / determinant, y: cross(x, point) / determinant });
}
