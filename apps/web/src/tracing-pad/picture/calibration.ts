import { fromMarks, fromScale, readPlate, type GrayPicture, type PlaneMap } from '@archwright/tracing';
import type { DrawnPoint, Seen } from '../drawn-tracing.js';
import type { Extent, Place } from '../pad-frame.js';

type FourMarks = readonly [Place, Place, Place, Place];

/** What is known of the picture's scale, in pixels of the picture, y down. */
export type Calibration =
  | { readonly kind: 'length'; readonly marks: readonly [Place, Place]; readonly lengthMm: number }
  | { readonly kind: 'rectangle'; readonly marks: FourMarks; readonly widthMm: number; readonly heightMm: number };

/** @throws {TracingError} for a scale or marks that no picture of a plate has */
export function planeOf(calibration: Calibration): PlaneMap {
  if (calibration.kind === 'rectangle') {
    return fromMarks(calibration.marks, calibration.widthMm, calibration.heightMm);
  }
  const [from, to] = calibration.marks;
  return fromScale(calibration.lengthMm / Math.hypot(to.x - from.x, to.y - from.y));
}

/** How the pad lies on the plate of the picture: its zero is the first mark, so that several pictures share it. */
export interface PadFrame {
  /** Plate mm, y down. */
  readonly zero: Place;
  /** Unit steps of the pad's x and y, in plate mm. */
  readonly across: Place;
  readonly forward: Place;
}

const minus = (a: Place, b: Place): Place => ({ x: a.x - b.x, y: a.y - b.y });
const dot = (a: Place, b: Place): number => a.x * b.x + a.y * b.y;

/** From the pad to the plate of the picture, mm. */
export const onPlate = ({ zero, across, forward }: PadFrame, { x, y }: Place): Place => ({
  x: zero.x + x * across.x + y * forward.x,
  y: zero.y + x * across.y + y * forward.y,
});

/** The picture as it was taken: its top is forward. */
export function uprightFrame(calibration: Calibration): PadFrame {
  return { zero: planeOf(calibration).toPlate(calibration.marks[0]), across: { x: 1, y: 0 }, forward: { x: 0, y: -1 } };
}

export interface FoundLines {
  readonly points: readonly DrawnPoint[];
  readonly frame: PadFrame;
}

/** Points along a line that lie closer than this say nothing new, mm. */
const THINNED_MM = 0.1;

function thinned(points: readonly DrawnPoint[]): DrawnPoint[] {
  const kept: DrawnPoint[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    const isNear = last?.phase === point.phase && Math.hypot(last.x - point.x, last.y - point.y) < THINNED_MM;
    if (!isNear) kept.push(point);
  }
  return kept;
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Finds the traced lines and says where they lie on the pad. @throws {TracingError} when none are found */
export function findLines(picture: GrayPicture, calibration: Calibration, seen: Seen): FoundLines {
  const plane = planeOf(calibration);
  const { input, toPicture } = readPlate(picture, plane, seen);
  // The reading's own frame is about the apex and turned by quarters; here it is learned from three of its points.
  const side = seen.view === 'mirrored' ? -1 : 1;
  const plateOf = ({ x, y }: Place): Place => plane.toPlate(toPicture({ x: side * x, y }));
  const apex = plateOf({ x: 0, y: 0 });
  const across = minus(plateOf({ x: 1, y: 0 }), apex);
  const forward = minus(plateOf({ x: 0, y: 1 }), apex);
  const zero = plane.toPlate(calibration.marks[0]);
  const fromZero = minus(apex, zero);
  const apexOnPad = { x: dot(fromZero, across), y: dot(fromZero, forward) };
  const points = input.points.map(({ phase, x, y }) => ({
    phase,
    x: hundredth(x + apexOnPad.x),
    y: hundredth(y + apexOnPad.y),
  }));
  return { points: thinned(points), frame: { zero, across, forward } };
}

/** A margin about what was found, mm, and the most that is shown of a plate. */
const MARGIN_MM = 3;
const MOST_MM = 50;

/** The part of the plate to show: about the lines, or about the middle of the marks. */
export function extentToShow(points: readonly DrawnPoint[], calibration: Calibration, frame: PadFrame): Extent {
  const plane = planeOf(calibration);
  const places: readonly Place[] =
    points.length > 0 ? points : calibration.marks.map((mark) => onPad(frame, plane.toPlate(mark)));
  const reach = (values: readonly number[]): [number, number] => {
    const [least, most] = [Math.min(...values) - MARGIN_MM, Math.max(...values) + MARGIN_MM];
    const middle = (least + most) / 2;
    const half = Math.min((most - least) / 2, MOST_MM / 2);
    return [middle - half, middle + half];
  };
  const [left, right] = reach(places.map(({ x }) => x));
  const [bottom, top] = reach(places.map(({ y }) => y));
  // Marks on one line still show the plate about them.
  const more = Math.max(0, (right - left - (top - bottom)) / 2);
  const less = Math.max(0, (top - bottom - (right - left)) / 2);
  return { left: left - less, right: right + less, bottom: bottom - more, top: top + more };
}

function onPad({ zero, across, forward }: PadFrame, plate: Place): Place {
  const away = minus(plate, zero);
  return { x: dot(away, across), y: dot(away, forward) };
}
