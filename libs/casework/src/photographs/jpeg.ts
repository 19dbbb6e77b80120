import { DomainError } from '@archwright/kernel';

/** The bytes are no picture that is kept; the message says what would be. */
export class PictureRefusedError extends DomainError {
  constructor(sentence: string) {
    super('casework.picture-refused', sentence);
  }
}

export interface JpegSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Markers of ITU-T T.81 (1992), table B.1. */
const PREFIX = 0xff;
const START_OF_IMAGE = 0xd8;
const START_OF_SCAN = 0xda;
const COMMENT = 0xfe;
/** Application segments that cameras fill with device, time and place (Exif 2.32, 4.7.2), and editors with texts. */
const NOTES = [0xe1, 0xed, COMMENT];

/** Starts of a frame; the three others of that row are tables. */
const startsFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/**
 * The size of a JPEG file, from the segments before its first scan (ITU-T T.81, annex B); the scan itself is not read.
 *
 * @throws {PictureRefusedError} for another kind of file, a broken one, and one that carries notes of a camera
 */
export function readJpeg(file: Uint8Array): JpegSize {
  const bytes = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.length < 4 || bytes.getUint16(0) !== ((PREFIX << 8) | START_OF_IMAGE))
    throw new PictureRefusedError('This is no JPEG file. Accepted: a JPEG photograph.');
  let size: JpegSize | null = null;
  for (let at = 2; at + 4 <= file.length;) {
    const [prefix, marker] = [bytes.getUint8(at), bytes.getUint8(at + 1)];
    if (prefix !== PREFIX) break;
    if (marker === START_OF_SCAN) {
      if (size === null) break;
      return size;
    }
    if (NOTES.includes(marker))
      throw new PictureRefusedError(
        'The file carries notes of the device, the time or the place. Accepted: a JPEG file without them.',
      );
    if (startsFrame(marker) && at + 9 <= file.length)
      size = { heightPx: bytes.getUint16(at + 5), widthPx: bytes.getUint16(at + 7) };
    at += 2 + bytes.getUint16(at + 2);
  }
  throw new PictureRefusedError('The JPEG file is broken or cut off. Accepted: a whole JPEG photograph.');
}
