import { ImplausibleValueError, TooFewReadingsError } from '../errors.js';
import { toothSelection, type ToothEstimate } from './tooth-selection.js';

function estimate(relation: string, face: Parameters<typeof toothSelection>[0]): ToothEstimate {
  const found = toothSelection(face).estimates.find((one) => one.relation === relation);
  if (found === undefined) throw new Error(`no estimate by ${relation}`);
  return found;
}

it('tells the relation of women from that of men where the paper does, and of neither while sex is not stated', () => {
  // Radia, J Prosthet Dent 2016;115:741: 15.56 over all, men 15.75, women 15.37.
  const centre = (sex: 'female' | 'male' | null) =>
    toothSelection({ bizygomaticMm: 134.7 }, [], sex).estimates.find(
      ({ relation }) => relation === 'bizygomatic-observed-ratio',
    );
  expect(centre(null)?.centreMm).toBeCloseTo(8.657, 3);
  expect(centre('female')?.formula).toContain('women');
  expect(centre('female')?.centreMm).toBeCloseTo(134.7 / 15.37, 9);
  expect(centre('male')?.centreMm).toBeCloseTo(134.7 / 15.75, 9);
});

describe('tooth selection', () => {
  // J Prosthet Dent 2002 (10.1067/mpr.2002.126095), n=229: observed 8.87 men, 8.68 women.
  it.each([
    [28.7, 8.868],
    [27.9, 8.621],
  ])('takes an inner canthal width of %p to a central incisor of %p', (innerCanthalMm, expected) => {
    expect(estimate('inner-canthal-golden', { innerCanthalMm }).centreMm).toBeCloseTo(expected, 2);
  });

  // Radia, J Prosthet Dent 2016;115:741, n=149: ratio 15.56 observed where 16 was taught.
  it('shows both bizygomatic ratios', () => {
    expect(estimate('bizygomatic-sixteenth', { bizygomaticMm: 134.7 }).centreMm).toBeCloseTo(8.419, 3);
    expect(estimate('bizygomatic-observed-ratio', { bizygomaticMm: 134.7 }).centreMm).toBeCloseTo(8.657, 3);
  });

  // Iranian adults (Dental Anthropology): interalar 36.38, six anterior teeth 48.23; rules from memory.
  it('shows both interalar rules, which miss the published mean by 4.85 and 0.57 mm', () => {
    const plusSeven = estimate('interalar-plus-seven', { interalarMm: 36.38 }).centreMm ?? Number.NaN;
    const times = estimate('interalar-times-1.31', { interalarMm: 36.38 }).centreMm ?? Number.NaN;
    expect(plusSeven).toBeCloseTo(43.38, 2);
    expect(times).toBeCloseTo(47.658, 2);
    expect(plusSeven - 48.23).toBeCloseTo(-4.85, 2);
    expect(times - 48.23).toBeCloseTo(-0.57, 2);
    expect(48.23 / 36.38).toBeCloseTo(1.326, 3);
  });

  // Published means 36.38 and 34.15 (Iranian adults), 35.2 and 34.8 (Woelfel 2014, n=316).
  it('takes the interalar width to the canine tips by the difference of the means', () => {
    expect(estimate('interalar-canine-tips', { interalarMm: 36.38 }).centreMm).toBeCloseTo(34.15, 3);
    expect(estimate('interalar-canine-tips', { interalarMm: 35.2 }).disagreements.join(' ')).toContain('35.2 and 34.8');
  });

  it('gives ranges with disagreements and never one number alone', () => {
    const { estimates, ranges } = toothSelection({
      interalarMm: 36,
      innerCanthalMm: 28,
      bizygomaticMm: 135,
      interpupillaryMm: 62,
    });
    for (const one of estimates) {
      expect(one.disagreements.length).toBeGreaterThan(0);
      if (one.centreMm !== null) expect((one.highMm ?? 0) - (one.lowMm ?? 0)).toBeGreaterThan(1);
    }
    const sixAnterior = ranges.find((range) => range.target === 'six-anterior-width');
    expect(sixAnterior?.lowMm).toBeCloseTo(135 / 3.3 - 4.14, 6);
    expect(sixAnterior?.highMm).toBeCloseTo(36 * 1.31 + 4.14, 6);
  });

  it('says that the interpupillary distance has a correlation and no numbers', () => {
    const { estimates, ranges } = toothSelection({ interpupillaryMm: 62 });
    expect(estimates).toHaveLength(1);
    expect(estimates[0]).toMatchObject({ centreMm: null, lowMm: null, highMm: null });
    expect(ranges).toEqual([]);
  });

  it('refuses no width, an impossible face and an impossible old tooth', () => {
    expect(() => toothSelection({})).toThrow(TooFewReadingsError);
    expect(() => toothSelection({ interalarMm: 3.6 })).toThrow('36 mm');
    const tooth = { target: 'central-incisor-width', object: 'old-denture', valueMm: 20 } as const;
    expect(() => toothSelection({ interalarMm: 36 }, [tooth])).toThrow(ImplausibleValueError);
  });
});
