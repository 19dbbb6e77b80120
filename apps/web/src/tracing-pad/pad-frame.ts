import type { DrawnPoint, Phase } from './drawn-tracing.js';

/** A place of the plate, mm: x to the right and y up as the screen shows it. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** The part of the plate that is shown, mm. */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** A tracing is some ten millimetres wide and leads forward from its apex, for a stylus on the upper jaw backward. */
const USUAL: Extent = { left: -12, right: 12, bottom: -12, top: 12 };
/** Ticks of a hand: finer ones only fill the memory. */
const HUNDREDTHS = 100;

/** The usual part of the plate, or the pictured one, and whatever was drawn beyond. */
export function extentOf(points: readonly DrawnPoint[], pictured: Extent | null): Extent {
  const base = pictured ?? USUAL;
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return {
    left: Math.min(base.left, ...xs),
    right: Math.max(base.right, ...xs),
    bottom: Math.min(base.bottom, ...ys),
    top: Math.max(base.top, ...ys),
  };
}

const hundredth = (value: number): number => Math.round(value * HUNDREDTHS) / HUNDREDTHS;

/** Nearest place on the plate that is shown, to a hundredth of a millimetre. */
export const within = ({ left, right, bottom, top }: Extent, { x, y }: Place): Place => ({
  x: hundredth(Math.min(Math.max(x, left), right)),
  y: hundredth(Math.min(Math.max(y, bottom), top)),
});

/** @returns position of the point nearest to a place, or null when none is within reach */
export function nearest(points: readonly DrawnPoint[], { x, y }: Place, reachMm: number): number | null {
  let found: number | null = null;
  let best = reachMm;
  points.forEach((point, at) => {
    const away = Math.hypot(point.x - x, point.y - y);
    if (away > best) return;
    found = at;
    best = away;
  });
  return found;
}

/** A stroke leaves a point every so often, mm. */
const STROKE_STEP_MM = 0.15;

/** @returns the stroke with the place added, or as it was while the hand has hardly moved */
export function strokeTo(stroke: readonly DrawnPoint[], phase: Phase, place: Place): readonly DrawnPoint[] {
  const last = stroke.at(-1);
  if (last && Math.hypot(last.x - place.x, last.y - place.y) < STROKE_STEP_MM) return stroke;
  return [...stroke, { phase, ...place }];
}

/** Arrow keys move by a quarter of a millimetre, with the shift key by two. */
export function stepOf(key: string, isLarge: boolean): Place | null {
  const step = isLarge ? 2 : 0.25;
  switch (key) {
    case 'ArrowLeft':
      return { x: -step, y: 0 };
    case 'ArrowRight':
      return { x: step, y: 0 };
    case 'ArrowUp':
      return { x: 0, y: step };
    case 'ArrowDown':
      return { x: 0, y: -step };
    default:
      return null;
  }
}
