import type { GrayPicture } from '@archwright/tracing';
import { evaluateDrawn } from '../drawn-tracing.js';
import { extentToShow, findLines, onPlate, planeOf, uprightFrame, type Calibration } from './calibration.js';

/** Light arms of 120 degrees from (200, 190), 10 pixels per mm, on a dark plate; drawn as distance from the line. */
function plate(): GrayPicture {
  const [width, height] = [400, 300];
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [dx, dy] = [Math.abs(x - 200), 190 - y];
      const along = dx * Math.cos(Math.PI / 6) + dy * Math.sin(Math.PI / 6);
      const off = Math.abs(-dx * Math.sin(Math.PI / 6) + dy * Math.cos(Math.PI / 6));
      data[y * width + x] = 60 + (along >= 0 && along <= 70 ? 150 * Math.exp(-((off / 2) ** 2)) : 0);
    }
  }
  return { width, height, data };
}
const SCALE: Calibration = {
  kind: 'length',
  marks: [
    { x: 50, y: 250 },
    { x: 150, y: 250 },
  ],
  lengthMm: 10,
};

describe('a photograph of the plate', () => {
  it.each(['as-worn', 'mirrored'] as const)('gives the pad its lines, %s, measured from the first mark', (view) => {
    const seen = { stylusOn: 'lower', view } as const;
    const { points, frame } = findLines(plate(), SCALE, seen);
    const evaluated = evaluateDrawn(points, seen);
    if (!('evaluation' in evaluated) || evaluated.evaluation.apex === null) throw new Error('No apex was found.');
    // By hand: the apex is 150 pixels right of the first mark and 60 above it, at 10 pixels per mm.
    const side = view === 'mirrored' ? -1 : 1;
    expect(side * evaluated.evaluation.apex.x).toBeCloseTo(15, 0);
    expect(evaluated.evaluation.apex.y).toBeCloseTo(6, 0);
    expect(Math.abs(evaluated.evaluation.apexAngleDeg - 120)).toBeLessThan(2);
    const inPicture = planeOf(SCALE).toPicture(onPlate(frame, { x: 15, y: 6 }));
    expect(inPicture.x).toBeCloseTo(200, 3);
    expect(inPicture.y).toBeCloseTo(190, 3);
    const { left, right } = extentToShow(points, SCALE, frame);
    expect(left).toBeLessThan(10);
    expect(right).toBeGreaterThan(20);
  });

  it('shows the plate about the marks where no line was found', () => {
    const shown = extentToShow([], SCALE, uprightFrame(SCALE));
    expect(shown).toEqual({ left: -3, right: 13, bottom: -8, top: 8 });
  });

  it('refuses a scale that no picture of a plate has', () => {
    expect(() => planeOf({ ...SCALE, lengthMm: 2000 })).toThrow(/from 0.001 to 0.5/);
  });
});
