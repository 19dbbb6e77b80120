import { TracingError } from '../errors.js';

/** A picture as brightness, row by row from the top left; any scale of grey, usually 0 to 255. */
export interface GrayPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/** Larger pictures are refused before they are decoded; phones make up to this. */
export const MOST_PIXELS = 50_000_000;
const FEWEST_PIXELS_PER_SIDE = 60;

/** @throws {TracingError} `tracing.picture-size` */
export function requirePictureSize({ width, height }: { readonly width: number; readonly height: number }): void {
  if (width * height > MOST_PIXELS) {
    const message = `The picture has ${((width * height) / 1e6).toFixed(0)} megapixels. Accepted: up to ${String(MOST_PIXELS / 1e6)}; make it smaller or cut out the plate.`;
    throw new TracingError('picture-size', message, { width, height });
  }
  if (Math.min(width, height) < FEWEST_PIXELS_PER_SIDE) {
    const message = `The picture is ${String(width)} by ${String(height)} pixels. Accepted: at least ${String(FEWEST_PIXELS_PER_SIDE)} on each side.`;
    throw new TracingError('picture-size', message, { width, height });
  }
}

/** Brightness between pixels, by linear interpolation; the border goes on outside. */
export function brightnessAt({ width, height, data }: GrayPicture, x: number, y: number): number {
  const cx = Math.min(Math.max(x, 0), width - 1.000001);
  const cy = Math.min(Math.max(y, 0), height - 1.000001);
  const [left, top] = [Math.floor(cx), Math.floor(cy)];
  const [u, v] = [cx - left, cy - top];
  const at = top * width + left;
  return (
    (1 - v) * ((1 - u) * data[at]! + u * data[at + 1]!) + v * ((1 - u) * data[at + width]! + u * data[at + width + 1]!)
  );
}
