import type { DrawnPoint } from './drawn-tracing.js';
import { extentOf, nearest, stepOf, strokeTo, within } from './pad-frame.js';

const at = (x: number, y: number): DrawnPoint => ({ phase: 'right', x, y });

describe('the plate on the screen', () => {
  it('shows the usual part, and whatever was drawn beyond it', () => {
    expect(extentOf([], null)).toEqual({ left: -12, right: 12, bottom: -12, top: 12 });
    expect(extentOf([at(20, -3)], null)).toMatchObject({ left: -12, right: 20 });
    const pictured = { left: 0, right: 5, bottom: 0, top: 5 };
    expect(extentOf([at(1, 1)], pictured)).toEqual(pictured);
  });

  it('keeps a place on it, to a hundredth of a millimetre', () => {
    expect(within(extentOf([], null), { x: 3.14159, y: 99 })).toEqual({ x: 3.14, y: 12 });
  });

  it('grabs the nearest point, and none out of reach', () => {
    const points = [at(0, 0), at(1, 0), at(1.2, 0)];
    expect(nearest(points, { x: 1.15, y: 0.1 }, 0.5)).toBe(2);
    expect(nearest(points, { x: 3, y: 3 }, 0.5)).toBeNull();
  });

  it('leaves a point of a stroke only where the hand has moved', () => {
    const begun = strokeTo([], 'left', { x: 0, y: 0 });
    expect(strokeTo(begun, 'left', { x: 0.1, y: 0 })).toBe(begun);
    expect(strokeTo(begun, 'left', { x: 0.2, y: 0 })).toEqual([
      { phase: 'left', x: 0, y: 0 },
      { phase: 'left', x: 0.2, y: 0 },
    ]);
  });

  it('is walked by arrow keys, in larger steps with the shift key', () => {
    expect(stepOf('ArrowUp', false)).toEqual({ x: 0, y: 0.25 });
    expect(stepOf('ArrowLeft', true)).toEqual({ x: -2, y: 0 });
    expect(stepOf('a', false)).toBeNull();
  });
});
