import { evaluateTracing } from '../evaluation/evaluation.js';
import type { TracingInput } from '../evaluation/tracing-input.js';
import { compareTracings } from './compare-tracings.js';

/** Arms that rise by one in one on the right and by `leftRise` on the left of an apex at (x, 0): no scatter at all. */
const arms = (x: number, leftRise = 1): TracingInput => ({
  stylusOn: 'lower',
  view: 'as-worn',
  points: [1, 2, 3, 4].flatMap((step) => [
    { phase: 'right' as const, x: x + step, y: step },
    { phase: 'left' as const, x: x - step, y: leftRise * step },
  ]),
});

describe('several tracings of one sitting', () => {
  it('are compared by angle and by the place of the apex, those without an apex left out', () => {
    // By hand: 90 and 180 - 45 - atan(1/2) = 108.435 degrees; apices 0.3 mm apart, each 0.15 mm from their mean.
    const parallel: TracingInput = {
      ...arms(0),
      points: [1, 2, 3].flatMap((x) => [
        { phase: 'right' as const, x, y: 1 },
        { phase: 'left' as const, x, y: 0 },
      ]),
    };
    const found = compareTracings([arms(0), arms(0.3, 0.5), parallel].map(evaluateTracing));
    expect(found).toMatchObject({ n: 2, withoutApex: 1 });
    expect(found?.apexAngleDeg.least).toBeCloseTo(90, 6);
    expect(found?.apexAngleDeg.most).toBeCloseTo(108.435, 3);
    expect(found?.apexAngleDeg.mean).toBeCloseTo(99.2175, 3);
    expect(found?.apices.mean.x).toBeCloseTo(0.15, 6);
    expect(found?.apices.rmsMm).toBeCloseTo(0.15, 6);
    expect(found?.apices.maxPairMm).toBeCloseTo(0.3, 6);
  });

  it('are nothing to compare below two', () => {
    expect(compareTracings([evaluateTracing(arms(0))])).toBeNull();
  });
});
