import fc from 'fast-check';
import { ScoringError } from '../errors.js';
import type { StageFacts } from '../checks/stage.js';
import type { Reading } from '../readings/reading.js';
import { screwSteps } from './bearing-screw.js';
import { asymmetryMm, interocclusalRestDistanceMm, lowerToMiddleThirdPercent } from './derived.js';
import { SIBILANT_LANGUAGES, sibilantPrompt } from './sibilant-prompt.js';
import { verticalWorkUp } from './work-up.js';

const facts: StageFacts = { milestones: ['jaw-relation'], arches: ['upper', 'lower'] };
const method = { landmarks: 'subnasale-gnathion' };
const rest = (value: number): Reading => ({ code: 'vertical-dimension-at-rest', value, method });
const occlusal = (value: number): Reading => ({ code: 'occlusal-vertical-dimension', value, method });
const stable: Reading[] = (['upper', 'lower'] as const).map((arch) => ({
  code: 'base-stability',
  value: 'stable',
  arch,
}));
const workUp = (...readings: Reading[]) => verticalWorkUp({ readings, facts });

describe('computed vertical values', () => {
  it('turns the sign of the rest distance when both dimensions change places', () => {
    const lengths = fc.double({ min: 1, max: 120, noNaN: true });
    fc.assert(
      fc.property(lengths, lengths, (a, b) => {
        const there = interocclusalRestDistanceMm({ restMm: a, occlusalMm: b });
        const back = interocclusalRestDistanceMm({ restMm: b, occlusalMm: a });
        expect(there + back).toBeCloseTo(0, 5);
      }),
      { seed: 20260105 },
    );
  });

  it.each([0, -3, Number.NaN, Number.POSITIVE_INFINITY])('refuses %p as a length', (restMm) => {
    expect(() => interocclusalRestDistanceMm({ restMm, occlusalMm: 60 })).toThrow('above 0 mm');
  });

  it('computes thirds and symmetry', () => {
    expect(lowerToMiddleThirdPercent({ lowerMm: 66, middleMm: 60 })).toBe(110);
    expect(asymmetryMm({ rightMm: 17.5, leftMm: 20 })).toBe(-2.5);
  });
});

describe('bearing screw', () => {
  const screw = { pitchMmPerTurn: 0.7, raisesBy: 'clockwise' } as const;

  it('lowers by small turns against the raising direction', () => {
    const steps = screwSteps(screw, -1);
    expect(steps.map((step) => step.turns)).toEqual([0.5, 0.5, expect.closeTo(0.428571, 5)]);
    expect(new Set(steps.map((step) => step.direction))).toEqual(new Set(['counter-clockwise']));
    expect(steps.at(-1)?.skinMmSoFar).toBeCloseTo(-1, 5);
  });

  it('never turns more than half a turn at a time and adds up to the change', () => {
    const tenths = fc.integer({ min: -150, max: 150 }).map((n) => n / 10);
    fc.assert(
      fc.property(tenths, fc.constantFrom(0.35, 0.5, 0.75, 1, 1.25), (changeMm, pitchMmPerTurn) => {
        const steps = screwSteps({ pitchMmPerTurn, raisesBy: 'counter-clockwise' }, changeMm);
        expect(steps.every((step) => step.turns > 0 && step.turns <= 0.5)).toBe(true);
        const turned = steps.reduce((sum, step) => sum + step.turns, 0) * pitchMmPerTurn;
        expect(turned).toBeCloseTo(Math.abs(changeMm), 4);
      }),
      { seed: 20260105 },
    );
  });

  it('refuses a pitch that no screw has', () => {
    expect(() => screwSteps({ ...screw, pitchMmPerTurn: 0 }, 1)).toThrow('0.1 to 3 mm per turn');
    expect(() => screwSteps(screw, Number.NaN)).toThrow('-15 to 15 mm');
  });
});

describe('vertical work-up', () => {
  it('lowers by what brings the rest distance into its usual range', () => {
    const { correction } = workUp(rest(66), occlusal(66), ...stable);
    expect(correction).toMatchObject({ direction: 'lower', leastMm: -2, mostMm: -4 });
    expect(correction?.repeatAfterwards.join(' ')).toContain('tracing');
  });

  it('raises for a large rest distance and gives the turns of the kit', () => {
    const screw = { pitchMmPerTurn: 1, raisesBy: 'clockwise' } as const;
    const { correction } = verticalWorkUp({ readings: [rest(70), occlusal(63)], facts, screw });
    expect(correction).toMatchObject({ direction: 'raise', leastMm: 3, mostMm: 5 });
    expect(correction?.screwSteps).toHaveLength(6);
  });

  it('lets contact in speech on stable bases decide against a passing rest distance', () => {
    const { correction } = workUp(rest(68), occlusal(65), { code: 'sibilant-test', value: 'contact' }, ...stable);
    expect(correction).toMatchObject({ direction: 'lower', leastMm: -1, supportedBy: ['sibilant-test'] });
    expect(correction?.contradictedBy).toContain('interocclusal-rest-distance');
  });

  it('believes nothing on unstable bases, and no speech on unstated ones', () => {
    const contact: Reading = { code: 'sibilant-test', value: 'contact' };
    const rocking: Reading = { code: 'base-stability', value: 'rocks', arch: 'lower' };
    expect(workUp(rest(66), occlusal(66), rocking)).toMatchObject({
      correction: null,
      note: expect.stringContaining('not stable') as string,
    });
    expect(workUp(rest(68), occlusal(65), contact).correction).toBeNull();
  });

  it('asks to measure again when methods disagree', () => {
    const swallow: Reading = { code: 'swallow-vertical-dimension', value: 60, method };
    const result = workUp(rest(70), occlusal(64), swallow);
    expect(result).toMatchObject({ correction: null, note: expect.stringContaining('disagree') as string });
  });

  it('shows every method with its weakness, captured or not', () => {
    const { lines, note } = workUp();
    expect(lines).toHaveLength(6);
    expect(lines.every((line) => line.weakness.length > 20 && line.indicates === 'unclear')).toBe(true);
    expect(note).toContain('Nothing was captured');
  });
});

describe('sibilant prompt', () => {
  it.each(SIBILANT_LANGUAGES)('has enough words full of sibilants in %s', (language) => {
    const prompt = sibilantPrompt(language);
    expect(prompt.words).toBeGreaterThanOrEqual(8);
    expect(prompt.sibilants).toBeGreaterThanOrEqual(8);
  });

  it('counts the English words and their letters s', () => {
    expect(sibilantPrompt('en')).toMatchObject({ words: 11, direction: 'ltr' });
    expect(sibilantPrompt('ar').direction).toBe('rtl');
    expect(() => sibilantPrompt('xx')).toThrow(ScoringError);
  });
});
