import { PictureRefusedError, readJpeg } from './jpeg.js';

/** Segments as ITU-T T.81 (1992), B.1.1.4, has them: marker, length with itself, parameters. */
const segment = (marker: number, ...body: number[]): number[] => [
  0xff,
  marker,
  (body.length + 2) >> 8,
  (body.length + 2) & 0xff,
  ...body,
];
const START = [0xff, 0xd8];
/** JFIF 1.02: "JFIF", version, units, densities, no thumbnail. */
const JFIF = segment(0xe0, 0x4a, 0x46, 0x49, 0x46, 0, 1, 2, 0, 0, 1, 0, 1, 0, 0);
const QUANTIZATION = segment(0xdb, 0, ...new Array<number>(64).fill(1));
/** B.2.2: precision 8, 480 lines, 640 samples a line, one component. */
const frame = (marker: number) => segment(marker, 8, 480 >> 8, 480 & 0xff, 640 >> 8, 640 & 0xff, 1, 1, 0x11, 0);
const HUFFMAN = segment(0xc4, 0, ...new Array<number>(16).fill(0));
const SCAN = segment(0xda, 1, 1, 0, 0, 63, 0);
const EXIF = segment(0xe1, 0x45, 0x78, 0x69, 0x66, 0, 0);
const file = (...parts: number[][]): Uint8Array => Uint8Array.from([...START, ...parts.flat(), 0x12, 0xff, 0xd9]);

describe('a JPEG file', () => {
  it.each([
    ['baseline', 0xc0],
    ['progressive', 0xc2],
  ])('says its size from the frame, %s', (_, marker) => {
    const picture = file(JFIF, QUANTIZATION, HUFFMAN, frame(marker), SCAN);
    expect(readJpeg(picture)).toEqual({ widthPx: 640, heightPx: 480 });
  });

  it('is read where its bytes lie in a larger buffer', () => {
    const picture = file(JFIF, frame(0xc0), SCAN);
    const larger = new Uint8Array(picture.length + 7);
    larger.set(picture, 7);
    expect(readJpeg(larger.subarray(7))).toEqual({ widthPx: 640, heightPx: 480 });
  });

  it.each([
    ['notes of a camera', file(JFIF, EXIF, frame(0xc0), SCAN), /carries notes/],
    ['a comment', file(segment(0xfe, 0x48, 0x69), frame(0xc0), SCAN), /carries notes/],
    ['another kind of file', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a]), /no JPEG file/],
    ['nothing', new Uint8Array(), /no JPEG file/],
    ['a file without a frame', file(JFIF, QUANTIZATION, SCAN), /broken/],
    ['one that is cut off before its scan', file(JFIF, frame(0xc0)).subarray(0, 30), /broken/],
    ['one whose segments do not follow each other', file(JFIF, [0, 1, 2, 3], frame(0xc0), SCAN), /broken/],
  ])('is refused for %s', (_, picture, said) => {
    expect(() => readJpeg(picture)).toThrow(PictureRefusedError);
    expect(() => readJpeg(picture)).toThrow(said);
  });
});
