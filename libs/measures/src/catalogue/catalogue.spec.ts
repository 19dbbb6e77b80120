import { DomainError } from '@archwright/kernel';
import { checkSettings } from '../checks/settings.js';
import { RULE_LIMITS } from '../checks/limits.js';
import { checkReading, checkValue } from '../readings/reading.js';
import { isWithin } from '../standing.js';
import { MEASUREMENTS, measurementByCode, measurementsCapturedAt } from './catalogue.js';

/** Code of the refusal, or what was returned instead. */
function refusalOf(work: () => unknown): unknown {
  try {
    return work();
  } catch (error) {
    return error instanceof DomainError ? error.code : error;
  }
}

describe('catalogue', () => {
  it('has each code and short form once, a source and a caution for every entry', () => {
    const codes = MEASUREMENTS.flatMap(({ code, abbreviation }) =>
      abbreviation === undefined ? [code] : [code, abbreviation],
    );
    expect(new Set(codes.map((code) => code.toLowerCase())).size).toBe(codes.length);
    for (const measurement of MEASUREMENTS) {
      expect(measurement.source.text.length).toBeGreaterThan(3);
      expect(measurement.caution.length).toBeGreaterThan(5);
      expect(measurement.capturedAt.length).toBeGreaterThan(0);
    }
  });

  it('keeps every usual range inside the plausible one and every usual answer among the answers', () => {
    for (const measurement of MEASUREMENTS) {
      if (measurement.kind === 'enum') {
        const options = measurement.options.map((option) => option.code);
        expect(options).toEqual(expect.arrayContaining([...(measurement.usualOptions ?? [])]));
      } else if (measurement.kind !== 'boolean') {
        const usual = [measurement.usual, ...(measurement.usualByGroup ?? []).map((group) => group.range)];
        for (const range of usual.filter((one) => one !== null)) {
          expect(range.min).toBeLessThan(range.max);
          expect(isWithin(measurement.plausible, range.min) && isWithin(measurement.plausible, range.max)).toBe(true);
        }
      }
    }
  });

  it('knows the short forms of the paper form and names nearby codes for an unknown one', () => {
    expect(measurementByCode('vdr').code).toBe('vertical-dimension-at-rest');
    expect(measurementByCode(' IRD ')).toMatchObject({ derived: true });
    expect(() => measurementByCode('facial')).toThrow('middle-facial-third');
  });

  it('asks for no computed value at a visit', () => {
    const codes = measurementsCapturedAt(['jaw-relation']).map(({ code }) => code);
    expect(codes).toContain('occlusal-vertical-dimension');
    expect(codes).not.toContain('interocclusal-rest-distance');
    expect(codes).not.toContain('post-dam-width');
  });
});

describe('a value', () => {
  it('is refused outside what is possible, and centimetres are suspected', () => {
    expect(() => checkValue('OVD', 6.5)).toThrow('centimetres? Then it is 65 mm');
    expect(refusalOf(() => checkValue('OVD', 650))).toBe('measures.implausible');
    expect(() => checkValue('OVD', 650)).not.toThrow('centimetres');
    expect(() => checkValue('CSS', -1)).toThrow('0 to 10 mm');
    expect(checkValue('OVD', 38)).toBe(38);
  });

  it.each([
    ['OVD', Number.NaN, undefined, 'measures.not-finite'],
    ['OVD', '65', undefined, 'measures.not-finite'],
    ['OVD', Number.POSITIVE_INFINITY, undefined, 'measures.not-finite'],
    ['OVD', 6.5, 'cm', 'measures.wrong-unit'],
    ['CAMP', 5, 'mm', 'measures.wrong-unit'],
    ['kapur-retention', 1.5, undefined, 'measures.not-whole'],
    ['kapur-retention', 4, undefined, 'measures.implausible'],
    ['SMILE', 'wide', undefined, 'measures.not-an-option'],
    ['pain-on-closing', 'no', undefined, 'measures.not-a-boolean'],
    ['XYZ', 1, undefined, 'measures.unknown-code'],
  ])('%s %p %p is refused as %s', (code, value, unit, reason) => {
    expect(refusalOf(() => checkValue(code, value, unit))).toBe(reason);
  });
});

describe('a reading', () => {
  it('comes back with the code and unit of the catalogue', () => {
    const reading = { code: 'OVD', value: 65, method: { landmarks: 'subnasale-gnathion' } };
    expect(checkReading(reading)).toEqual({ ...reading, code: 'occlusal-vertical-dimension', unit: 'mm' });
  });

  it.each([
    ['without landmarks', { code: 'OVD', value: 65 }, 'measures.qualifier'],
    ['with unknown landmarks', { code: 'OVD', value: 65, method: { landmarks: 'ear' } }, 'measures.qualifier'],
    ['with a method it does not have', { code: 'MID', value: 1, method: { landmarks: 'ear' } }, 'measures.qualifier'],
    ['without its arch', { code: 'base-stability', value: 'stable' }, 'measures.qualifier'],
    ['with a side it does not have', { code: 'MID', value: 1, side: 'left' as const }, 'measures.qualifier'],
    ['that is computed', { code: 'IRD', value: 3 }, 'measures.derived-not-typed'],
  ])('%s is refused', (_name, reading, code) => {
    expect(refusalOf(() => checkReading(reading))).toBe(code);
  });
});

describe('a practice’s settings', () => {
  it('move usual ranges and adjustable limits and carry their version', () => {
    const settings = checkSettings({
      version: 7,
      usual: { IRD: { min: 1, max: 5 } },
      limits: { 'failed-tracings': 2 },
    });
    const measurement = measurementByCode('IRD');
    if (measurement.kind !== 'number') throw new Error('not a number');
    expect(settings.usual(measurement, {})?.range).toEqual({ min: 1, max: 5 });
    expect(settings.limit('failed-tracings')).toMatchObject({ value: 2, source: { standing: 'project default' } });
    expect(settings.practiceVersion).toBe(7);
  });

  it('keep the range of a region apart, and replace those of groups of people', () => {
    const settings = checkSettings({
      version: 2,
      usual: { BORD: { min: 1, max: 4 }, NLA: { min: 85, max: 115 }, 'CSS/class-ii': { min: 2, max: 7 } },
    });
    const usual = (code: string, ...where: [object, string?]) => {
      const measurement = measurementByCode(code);
      return measurement.kind === 'number' ? settings.usual(measurement, ...where)?.range : undefined;
    };
    expect(usual('BORD', {}, 'upper-labial')).toEqual({ min: 1, max: 4 });
    expect(usual('BORD', {}, 'post-dam')).toEqual({ min: 0.5, max: 1.5 });
    expect(usual('NLA', { sex: 'female' })).toEqual({ min: 85, max: 115 });
    expect(usual('CSS', { skeletalClass: 'class-ii' })).toEqual({ min: 2, max: 7 });
    expect(usual('CSS', {})).toEqual({ min: 1, max: 2 });
  });

  it.each([
    ['of a group that it does not have', { usual: { 'CSS/class-iii': { min: 1, max: 2 } } }],
    ['past the plausible range', { usual: { OVD: { min: 30, max: 70 } } }],
    ['reversed', { usual: { OVD: { min: 70, max: 60 } } }],
    ['not finite', { usual: { OVD: { min: 60, max: Number.NaN } } }],
    ['for an answer', { usual: { SMILE: { min: 0, max: 1 } } }],
    ['of a fixed limit', { limits: { 'rest-distance-none-mm': -1 } }],
    ['beyond the reach of a limit', { limits: { 'failed-tracings': 50 } }],
    ['of a limit that no rule has', { limits: { nothing: 1 } }],
  ])('are refused %s', (_name, overlay) => {
    expect(refusalOf(() => checkSettings({ version: 1, ...overlay }))).toBe('measures.overlay');
  });

  it('leave every shipped limit inside its own reach', () => {
    for (const { value, adjustable } of RULE_LIMITS) {
      if (adjustable !== null) expect(isWithin(adjustable, value)).toBe(true);
    }
  });
});
