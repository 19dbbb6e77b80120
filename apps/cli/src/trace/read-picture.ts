import { MOST_PIXELS, TracingError, type GrayPicture } from '@archwright/tracing';
import sharp from 'sharp';

/** First bytes of a PNG and of a JPEG file: the name of a file proves nothing. */
const SIGNATURES: readonly (readonly number[])[] = [
  [0x89, 0x50, 0x4e, 0x47],
  [0xff, 0xd8, 0xff],
];

export const isPicture = (bytes: Uint8Array): boolean =>
  SIGNATURES.some((signature) => signature.every((byte, at) => bytes[at] === byte));

/**
 * Brightness of a PNG or JPEG picture, turned upright as the camera noted.
 *
 * @throws {TracingError} `tracing.picture-size` above 50 megapixels, before anything is decoded, or
 *   `tracing.no-tracing` for a file that is damaged
 */
export async function readPicture(bytes: Uint8Array): Promise<GrayPicture> {
  const image = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' });
  try {
    const { data, info } = await image.rotate().flatten().greyscale().raw().toBuffer({ resolveWithObject: true });
    return { width: info.width, height: info.height, data: Float32Array.from(data) };
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    if (said.includes('pixel limit')) {
      throw new TracingError(
        'picture-size',
        `The picture has more than ${String(MOST_PIXELS / 1e6)} megapixels. Accepted: up to that; make it smaller or cut out the plate.`,
      );
    }
    const [reason = ''] = said.split('\n', 1);
    throw new TracingError(
      'no-tracing',
      `The picture cannot be read (${reason.replace(/:\s*$/, '')}). Accepted: PNG or JPEG.`,
    );
  }
}
