import { MOST_PIXELS, type GrayPicture } from '@archwright/tracing';
import { padWords } from '../../words/tracing-pad.js';

/** A picture that was chosen, upright as the camera noted, and nowhere but in this tab. */
export interface LoadedPicture {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and opacity of each pixel, row by row. */
  readonly pixels: Uint8ClampedArray;
  /** Of the file, to show it; to be given back when it is shown no longer. */
  readonly url: string;
}

/** The picture can't be used; the message says what would be. */
export class PictureError extends Error {
  override readonly name = 'PictureError';
}

/** @throws {PictureError} for a file that is no picture, or is larger than is read */
export async function loadPicture(file: File): Promise<LoadedPicture> {
  const bitmap = await createImageBitmap(file).catch(() => {
    throw new PictureError(padWords.picture.unreadable);
  });
  try {
    const { width, height } = bitmap;
    if (width * height > MOST_PIXELS) throw new PictureError(padWords.picture.tooLarge(MOST_PIXELS / 1e6));
    const context = new OffscreenCanvas(width, height).getContext('2d');
    if (context === null) throw new PictureError(padWords.picture.unreadable);
    context.drawImage(bitmap, 0, 0);
    return { width, height, pixels: context.getImageData(0, 0, width, height).data, url: URL.createObjectURL(file) };
  } finally {
    bitmap.close();
  }
}

/** Brightness as the eye weighs the colours (ITU-R BT.601). */
export function toGray({ width, height, pixels }: Pick<LoadedPicture, 'width' | 'height' | 'pixels'>): GrayPicture {
  const data = new Float32Array(width * height);
  for (let at = 0; at < data.length; at++) {
    const red = pixels[4 * at] ?? 0;
    const green = pixels[4 * at + 1] ?? 0;
    const blue = pixels[4 * at + 2] ?? 0;
    data[at] = 0.299 * red + 0.587 * green + 0.114 * blue;
  }
  return { width, height, data };
}
