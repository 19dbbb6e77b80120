import { derivedValues } from './derived-values.js';

const length = (code: string, value: number, landmarks = 'nose-chin') => ({
  code,
  value,
  unit: 'mm',
  method: { landmarks },
});

describe('derivedValues', () => {
  it('works out the rest distance from the medians of both dimensions', () => {
    const readings = [
      ...[67.5, 68, 70].map((mm) => length('vertical-dimension-at-rest', mm)),
      length('occlusal-vertical-dimension', 65.2),
    ];
    expect(derivedValues(readings)).toEqual([
      expect.objectContaining({ code: 'interocclusal-rest-distance', value: 2.8, unit: 'mm' }),
    ]);
  });

  it('gives no number where one part is missing or both were measured between other marks', () => {
    const rest = length('vertical-dimension-at-rest', 68);
    expect(derivedValues([rest])).toEqual([]);
    expect(derivedValues([rest, length('occlusal-vertical-dimension', 65, 'brow-chin')])).toEqual([]);
  });
});
