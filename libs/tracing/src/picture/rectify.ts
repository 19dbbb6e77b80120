import { gaussianBlur } from './gaussian.js';
import { brightnessAt, type GrayPicture } from './gray-picture.js';
import type { PlaneMap } from './homography.js';
import { distance, type Point } from '../point.js';

/** The plate seen straight on. */
export interface PlatePicture extends GrayPicture {
  readonly mmPerPixel: number;
  /** Of the first pixel, plate mm. */
  readonly origin: Point;
}

/** Fine enough for a line of a tenth of a millimetre. */
const FINEST_MM = 0.05;
/** A plate is not larger than this; what lies outside is the bench. */
const LARGEST_MM = 90;

/** Pixels of the original at a point of the plate, per mm. */
function pixelsPerMm(map: PlaneMap, at: Point): number {
  const [here, right, down] = [at, { x: at.x + 1, y: at.y }, { x: at.x, y: at.y + 1 }].map(map.toPicture) as [
    Point,
    Point,
    Point,
  ];
  return Math.min(distance(here, right), distance(here, down));
}

/** The part of the plate that the picture shows, cut to the largest plate around its middle. */
function extentOf({ width, height }: GrayPicture, map: PlaneMap): { from: Point; to: Point } {
  const corners = [
    { x: 0, y: 0 },
    { x: width - 1, y: 0 },
    { x: width - 1, y: height - 1 },
    { x: 0, y: height - 1 },
  ].map(map.toPlate);
  const middle = map.toPlate({ x: width / 2, y: height / 2 });
  const cut = (values: readonly number[], centre: number) => [
    Math.max(Math.min(...values), centre - LARGEST_MM / 2),
    Math.min(Math.max(...values), centre + LARGEST_MM / 2),
  ];
  const [left, right] = cut(
    corners.map(({ x }) => x),
    middle.x,
  ) as [number, number];
  const [top, bottom] = cut(
    corners.map(({ y }) => y),
    middle.y,
  ) as [number, number];
  return { from: { x: left, y: top }, to: { x: right, y: bottom } };
}

/**
 * Which points of the plate the picture shows. The plate seen straight on is a rectangle and the picture of it is none:
 * beyond its border the last pixels go on as streaks, which look like lines and meet at its corners.
 *
 * @param marginMm how far inside the border a point has to lie
 */
export function shownBy({ width, height }: GrayPicture, map: PlaneMap, marginMm: number): (point: Point) => boolean {
  return (point) => {
    const { x, y } = map.toPicture(point);
    const margin = marginMm * pixelsPerMm(map, point);
    return x >= margin && y >= margin && x <= width - 1 - margin && y <= height - 1 - margin;
  };
}

/** Samples the plate straight on, smoothed first where the original is finer, so that its noise averages out. */
export function rectify(picture: GrayPicture, map: PlaneMap): PlatePicture {
  const { from, to } = extentOf(picture, map);
  const native = pixelsPerMm(map, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  const mmPerPixel = Math.max(FINEST_MM, 1 / native);
  const shrink = native * mmPerPixel;
  const source = shrink > 1.2 ? gaussianBlur(picture, 0.45 * shrink) : picture;
  const width = Math.max(2, Math.floor((to.x - from.x) / mmPerPixel));
  const height = Math.max(2, Math.floor((to.y - from.y) / mmPerPixel));
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const place = map.toPicture({ x: from.x + x * mmPerPixel, y: from.y + y * mmPerPixel });
      data[y * width + x] = brightnessAt(source, place.x, place.y);
    }
  }
  return { width, height, data, mmPerPixel, origin: from };
}
