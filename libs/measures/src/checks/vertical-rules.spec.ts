import fc from 'fast-check';
import type { Reading, ReadingValue } from '../readings/reading.js';
import { evaluateStage } from './evaluate-stage.js';
import type { StageFacts } from './stage.js';
import { overallVerdict, type Verdict } from './verdict.js';

const marks = { landmarks: 'subnasale-gnathion' };
const jawRelation: StageFacts = { milestones: ['jaw-relation'], arches: ['upper', 'lower'] };
const rest = (value: number, method: Record<string, string> = marks): Reading => ({
  code: 'vertical-dimension-at-rest',
  value,
  method,
});
const occlusal = (value: number, method: Record<string, string> = marks): Reading => ({
  code: 'occlusal-vertical-dimension',
  value,
  method,
});
const stability = (value: ReadingValue): Reading[] => [
  { code: 'base-stability', value, arch: 'upper' },
  { code: 'base-stability', value, arch: 'lower' },
];
const sibilants = (value: string): Reading => ({ code: 'sibilant-test', value });

function verdictOf(rule: string, verdicts: readonly Verdict[]): Verdict {
  const found = verdicts.find((verdict) => verdict.rule === rule);
  if (found === undefined) throw new Error(`no verdict of ${rule}`);
  return found;
}
const check = (readings: Reading[], facts: StageFacts = jawRelation) => evaluateStage({ readings, facts });

describe('interocclusal rest distance', () => {
  // Arithmetic exact; textbook 2 to 4 mm (from memory), cut-offs project defaults: only zero or less fails.
  it.each([
    [68, 65, 3, 'pass'],
    [66, 66, 0, 'fail'],
    [70, 64, 6, 'caution'],
    [70, 63, 7, 'caution'],
    [66, 68, -2, 'fail'],
    [66.1, 62.1, 4, 'pass'],
    [66, 65, 1, 'caution'],
  ])('takes rest %p minus occlusal %p as %p mm: %s', (restMm, occlusalMm, distance, verdict) => {
    const found = verdictOf('interocclusal-rest-distance', check([rest(restMm), occlusal(occlusalMm)]));
    expect(found).toMatchObject({ value: distance, verdict, blocks: verdict === 'fail', unit: 'mm' });
  });

  it('sends a lost rest distance to the chair at jaw relation, back a stage at trial and after cure', () => {
    const at = (kind: 'jaw-relation' | 'trial' | 'placement') =>
      verdictOf('interocclusal-rest-distance', check([rest(66), occlusal(66)], { ...jawRelation, milestones: [kind] }));
    expect(at('jaw-relation')).toMatchObject({ action: 'correct-in-chair', trigger: 'vertical-dimension-out-of-rule' });
    expect(at('trial')).toMatchObject({ action: 'return-to-stage', trigger: 'jaw-relation-wrong-at-trial' });
    expect(at('placement')).toMatchObject({ action: 'return-to-stage', trigger: 'jaw-relation-wrong-after-cure' });
  });

  it('never compares different landmarks and asks for new readings', () => {
    const other = { landmarks: 'nose-tip-chin' };
    const found = verdictOf('interocclusal-rest-distance', check([rest(68), occlusal(68, other)]));
    expect(found).toMatchObject({ verdict: 'caution', value: null, action: 'repeat' });
    expect(found.reason).toContain('nose-tip-chin');
  });

  it('fails exactly when nothing is left, whatever the other values', () => {
    const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
    fc.assert(
      fc.property(tenths(40, 98), tenths(40, 98), (restMm, occlusalMm) => {
        const found = verdictOf('interocclusal-rest-distance', check([rest(restMm), occlusal(occlusalMm)]));
        expect(found.verdict === 'fail').toBe(restMm <= occlusalMm);
      }),
      { seed: 20260105 },
    );
  });
});

describe('repeated readings', () => {
  it('asks to repeat three readings that lie 2.5 mm apart, and names their median', () => {
    const found = verdictOf('repeated-vertical-readings', check([rest(67), rest(68.5), rest(66)]));
    expect(found).toMatchObject({ verdict: 'caution', value: 2.5, action: 'repeat' });
    expect(found.reason).toContain('median 67 mm');
  });

  it('uses the median for the rest distance', () => {
    const verdicts = check([rest(67), rest(68.5), rest(66.5), occlusal(64)]);
    expect(verdictOf('interocclusal-rest-distance', verdicts).value).toBe(3);
  });
});

describe('sibilant contact', () => {
  it('fails on stable bases although the rest distance passes', () => {
    const verdicts = check([rest(68), occlusal(65), sibilants('contact'), ...stability('stable')]);
    expect(verdictOf('interocclusal-rest-distance', verdicts).verdict).toBe('pass');
    expect(verdictOf('sibilant-contact', verdicts)).toMatchObject({
      verdict: 'fail',
      trigger: 'vertical-dimension-out-of-rule',
      action: 'correct-in-chair',
    });
    expect(overallVerdict(verdicts)).toBe('fail');
  });

  it.each([
    ['rocking', stability('rocks')],
    ['unstated', []],
    ['one unstated', stability('stable').slice(0, 1)],
  ])('is a caution to check the base first on %s bases', (_name, bases) => {
    const found = verdictOf('sibilant-contact', check([sibilants('click'), ...bases]));
    expect(found).toMatchObject({ verdict: 'caution', blocks: false, action: 'repeat' });
    expect(found.reason).toContain('Check the base first');
  });

  it('treats a speaking space of zero as contact', () => {
    const none: Reading = { code: 'closest-speaking-space', value: 0 };
    expect(verdictOf('closest-speaking-space', check([none, ...stability('stable')])).verdict).toBe('fail');
    expect(verdictOf('closest-speaking-space', check([none])).verdict).toBe('caution');
  });

  it('never makes the overall verdict better', () => {
    const order = ['pass', 'caution', 'fail'];
    fc.assert(
      fc.property(
        fc.integer({ min: 60, max: 75 }),
        fc.integer({ min: 58, max: 75 }),
        fc.constantFrom('stable', 'rocks', 'lifts'),
        (restMm, occlusalMm, base) => {
          const readings = [rest(restMm), occlusal(occlusalMm), ...stability(base)];
          const without = overallVerdict(check([...readings, sibilants('no-contact')]));
          const withContact = overallVerdict(check([...readings, sibilants('contact')]));
          expect(order.indexOf(withContact)).toBeGreaterThanOrEqual(order.indexOf(without));
        },
      ),
      { seed: 20260105 },
    );
  });
});

describe('other vertical checks', () => {
  it('cautions about a rise of more than 5 mm and about any loss against the old dentures', () => {
    const old = (value: number): Reading => ({ code: 'old-denture-occlusal-vertical-dimension', value, method: marks });
    const change = (oldMm: number) => verdictOf('change-of-vertical-dimension', check([occlusal(65), old(oldMm)]));
    expect(change(60)).toMatchObject({ verdict: 'pass', value: 5 });
    expect(change(59)).toMatchObject({ verdict: 'caution', value: 6 });
    expect(change(66)).toMatchObject({ verdict: 'caution', value: -1 });
  });

  it('cautions when the lower third leaves 10 % of the middle, and when swallowing disagrees', () => {
    const third = (which: string, value: number): Reading => ({ code: `${which}-facial-third`, value });
    const thirds = (lower: number) => verdictOf('facial-thirds', check([third('lower', lower), third('middle', 60)]));
    expect(thirds(66).verdict).toBe('pass');
    expect(thirds(66.5).verdict).toBe('caution');
    const swallow: Reading = { code: 'swallow-vertical-dimension', value: 62.9, method: marks };
    expect(verdictOf('swallow-cross-check', check([occlusal(65), swallow]))).toMatchObject({
      verdict: 'caution',
      value: -2.1,
    });
  });
});
