/** A point of the plate, in mm unless said otherwise. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const plus = (a: Point, b: Point, factor = 1): Point => ({ x: a.x + factor * b.x, y: a.y + factor * b.y });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** Third component of the cross product: positive when `b` lies counter-clockwise of `a`. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
export const length = (a: Point): number => Math.hypot(a.x, a.y);
export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
export const unit = (a: Point): Point => {
  const size = length(a);
  return { x: a.x / size, y: a.y / size };
};

export const toDegrees = (radians: number): number => (radians * 180) / Math.PI;
export const toRadians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Unsigned angle between two directions, in degrees, 0 to 180; exact near both ends, where an arc cosine is not. */
export const angleBetweenDeg = (a: Point, b: Point): number => toDegrees(Math.atan2(Math.abs(cross(a, b)), dot(a, b)));

export const centroid = (points: readonly Point[]): Point => ({
  x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
  y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
});
