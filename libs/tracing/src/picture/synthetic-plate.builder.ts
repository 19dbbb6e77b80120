import type { SeededRandom } from '@archwright/kernel';
import { rotated, modelApexAngleDeg } from '../movement/planar-model.js';
import { type Point } from '../point.js';
import type { GrayPicture } from './gray-picture.js';
import { fromMarks, fromScale, type PlaneMap } from './homography.js';
import { gaussianBlur } from './gaussian.js';

export interface SyntheticPlate {
  readonly picture: GrayPicture;
  readonly map: PlaneMap;
  /** Truth: the apex in the picture, pixels, and the angle of the arms at it. */
  readonly apexPx: Point;
  readonly apexAngleDeg: number;
  readonly mmPerPixel: number;
}

/** Plate, mm: a rectangle between four marks. */
const PLATE = { width: 40, height: 32 };

/** Distance to a chain of points, mm; only near it, which is all that shows. */
function distanceToChain(atX: number, atY: number, chain: readonly Point[]): number {
  let nearest = Infinity;
  for (let i = 1; i < chain.length; i++) {
    const a = chain[i - 1]!;
    const b = chain[i]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const part = Math.min(1, Math.max(0, ((atX - a.x) * dx + (atY - a.y) * dy) / (dx * dx + dy * dy)));
    nearest = Math.min(nearest, (atX - a.x - part * dx) ** 2 + (atY - a.y - part * dy) ** 2);
  }
  return Math.sqrt(nearest);
}

const between = (random: SeededRandom, low: number, high: number): number => low + (high - low) * random.nextUnit();
const chance = (random: SeededRandom, share: number): boolean => random.nextUnit() < share;

/** A camera held somewhat askew over the plate: where its four corners fall in the picture. */
function corners(random: SeededRandom, width: number, height: number): [Point, Point, Point, Point] {
  const inset = 0.08;
  const wobble = () => between(random, -0.05, 0.05);
  const at = (x: number, y: number): Point => ({ x: (x + wobble()) * width, y: (y + wobble()) * height });
  return [at(inset, inset), at(1 - inset, inset), at(1 - inset, 1 - inset), at(inset, 1 - inset)];
}

/**
 * A picture of a plate with a tracing whose truth is known: perspective, uneven light, a soft shadow, blur, grain,
 * scratches; arms of the planar model of lateral movement.
 *
 * @param width of the picture, pixels
 */
export function syntheticPlate(
  random: SeededRandom,
  { width, hasTracing = true }: { width: number; hasTracing?: boolean },
): SyntheticPlate {
  const height = Math.round((width * PLATE.height) / PLATE.width);
  const map = chance(random, 0.7)
    ? fromMarks(corners(random, width, height), PLATE.width, PLATE.height)
    : fromScale(PLATE.width / width);
  const model = { intercondylarMm: between(random, 95, 125), needleMm: between(random, 65, 100) };
  const apex = { x: PLATE.width / 2 + between(random, -4, 4), y: PLATE.height * 0.62 + between(random, -2, 2) };
  const lineMm = between(random, 0.2, 0.5);
  const arc = (side: 1 | -1, degrees: number): Point[] =>
    Array.from({ length: 7 }, (_, at) => {
      const { x, y } = rotated(model, (degrees * at) / 6);
      return { x: apex.x + side * x, y: apex.y - y };
    });
  const chains = hasTracing
    ? [
        arc(1, between(random, 3, 5)),
        arc(-1, between(random, 3, 5)),
        ...(chance(random, 0.5)
          ? [[apex, { x: apex.x + between(random, -0.2, 0.2), y: apex.y - between(random, 3, 6) }]]
          : []),
      ]
    : [];
  const scratches = Array.from({ length: random.nextBelow(3) }, () => {
    const from = { x: between(random, 2, 38), y: between(random, 2, 30) };
    return [from, { x: from.x + between(random, -6, 6), y: from.y + between(random, -6, 6) }];
  });
  const contrast = (chance(random, 0.5) ? 1 : -1) * between(random, 35, 90);
  const ground = contrast > 0 ? between(random, 50, 90) : between(random, 150, 190);
  const light = { x: between(random, -35, 35), y: between(random, -35, 35) };
  const shadow = { edge: between(random, 5, 35), depth: between(random, 0, 40), soft: between(random, 1.5, 4) };
  const raw = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = map.toPlate({ x, y });
      const line = Math.min(
        1,
        chains.reduce((sum, chain) => sum + profile(distanceToChain(at.x, at.y, chain), lineMm), 0),
      );
      const scratch = scratches.reduce((sum, chain) => sum + profile(distanceToChain(at.x, at.y, chain), 0.12), 0);
      raw[y * width + x] =
        ground +
        light.x * (x / width - 0.5) +
        light.y * (y / height - 0.5) -
        shadow.depth / (1 + Math.exp(-(at.x - shadow.edge) / shadow.soft)) +
        contrast * (line + 0.4 * scratch);
    }
  }
  const { data } = gaussianBlur({ width, height, data: raw }, between(random, 0.6, 1.6));
  const grain = between(random, 1, 5);
  for (let at = 0; at < data.length; at++) {
    data[at] = Math.min(
      255,
      Math.max(
        0,
        Math.round(data[at]! + grain * (random.nextUnit() + random.nextUnit() + random.nextUnit() - 1.5) * 2),
      ),
    );
  }
  return {
    picture: { width, height, data },
    map,
    apexPx: map.toPicture(apex),
    apexAngleDeg: modelApexAngleDeg(model),
    mmPerPixel: PLATE.width / width,
  };
}

/** Brightness of a line at a distance from its middle: 1 inside, fading over its rim. */
const profile = (away: number, width: number): number => Math.exp(-((away / (width / 2)) ** 4));
