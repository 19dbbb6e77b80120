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

  it('takes the left canine line from the right one, and adds grades of one index only', () => {
    const line = (side: 'right' | 'left', value: number) => ({ code: 'canine-line-distance', value, unit: 'mm', side });
    expect(derivedValues([line('right', 17.5), line('left', 20)])).toMatchObject([
      { code: 'canine-line-asymmetry', value: -2.5 },
    ]);
    const grades = (variant: string) =>
      (['upper', 'lower'] as const).flatMap((arch) => [
        { code: 'kapur-retention', value: 2, arch, method: { variant } },
        { code: 'kapur-stability', value: 1, arch, method: { variant } },
      ]);
    const own = grades('kapur-olshan');
    expect(derivedValues(own)).toMatchObject([{ code: 'kapur-sum', value: 6 }]);
    expect(derivedValues([...own.slice(0, 3), ...grades('kapur-1967').slice(3)])).toEqual([]);
    expect(derivedValues(grades('modified'))).toEqual([]);
  });
});
