import type { Extent } from '../pad-frame.js';
import { onPlate, planeOf, type Calibration, type PadFrame } from './calibration.js';
import type { LoadedPicture } from './load-picture.js';

/** Fine enough to see a scratch, coarse enough to draw at once. */
const PIXELS_PER_MM = 24;

/** The part of the picture that the pad shows, seen straight on. @returns an address of the picture for the page */
export function straighten(picture: LoadedPicture, calibration: Calibration, frame: PadFrame, extent: Extent): string {
  const width = Math.round((extent.right - extent.left) * PIXELS_PER_MM);
  const height = Math.round((extent.top - extent.bottom) * PIXELS_PER_MM);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('This browser draws nothing on a canvas.');
  const drawn = context.createImageData(width, height);
  const { toPicture } = planeOf(calibration);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const place = { x: extent.left + (column + 0.5) / PIXELS_PER_MM, y: extent.top - (row + 0.5) / PIXELS_PER_MM };
      const { x, y } = toPicture(onPlate(frame, place));
      const [left, top] = [Math.round(x), Math.round(y)];
      // Beyond the picture the pad stays clear.
      if (left < 0 || top < 0 || left >= picture.width || top >= picture.height) continue;
      const from = 4 * (top * picture.width + left);
      drawn.data.set(picture.pixels.subarray(from, from + 4), 4 * (row * width + column));
    }
  }
  context.putImageData(drawn, 0, 0);
  return canvas.toDataURL('image/png');
}
