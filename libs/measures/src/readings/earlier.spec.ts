import { evaluateStage } from '../checks/evaluate-stage.js';
import { derivedValues } from '../vertical/derived-values.js';
import { countsLater, withEarlier } from './earlier.js';
import type { Reading } from './reading.js';

const method = { landmarks: 'subnasale-gnathion' };
const height = (code: string, value: number): Reading => ({ code, value, unit: 'mm', method });
const old = height('old-denture-occlusal-vertical-dimension', 60);
const now = height('occlusal-vertical-dimension', 66);

describe('readings of earlier visits', () => {
  it('go on with the patient until they are taken again', () => {
    expect(withEarlier([now], [old])).toEqual([now, old]);
    const again = { ...old, value: 62 };
    expect(withEarlier([now, again], [old])).toEqual([now, again]);
    expect(derivedValues(withEarlier([now], [old]))).toMatchObject([
      { code: 'change-of-occlusal-vertical-dimension', value: 6 },
    ]);
  });

  it('of the new dentures are compared, never taken over', () => {
    expect(countsLater('occlusal-vertical-dimension')).toBe(true);
    expect(countsLater('vertical-dimension-at-rest')).toBe(false);
    expect(withEarlier([], [now])).toEqual([]);
  });

  it('tell a change against the old dentures, and a speaking space that a skeletal class explains', () => {
    const skeletal = { code: 'skeletal-class', value: 'class-ii' };
    const space = { code: 'closest-speaking-space', value: 4, unit: 'mm' };
    const facts = { milestones: ['jaw-relation'], arches: ['upper', 'lower'] } as const;
    const without = evaluateStage({ readings: [now, space], facts });
    expect(without.some(({ rule }) => rule === 'change-of-vertical-dimension')).toBe(false);
    expect(without.find(({ measurement }) => measurement === 'closest-speaking-space')?.verdict).toBe('caution');
    const known = evaluateStage({ readings: [now, space], facts: { ...facts, earlier: [old, skeletal] } });
    expect(known.find(({ rule }) => rule === 'change-of-vertical-dimension')).toMatchObject({
      verdict: 'caution',
      value: 6,
    });
    expect(known.find(({ measurement }) => measurement === 'closest-speaking-space')?.verdict).toBe('pass');
    // Nothing of an earlier visit is judged a second time.
    expect(known.filter(({ rule }) => rule === 'usual-range').map(({ measurement }) => measurement)).toEqual(
      without.filter(({ rule }) => rule === 'usual-range').map(({ measurement }) => measurement),
    );
  });

  it.each([
    [66, 66.5, 'pass'],
    [66, 64.5, 'caution'],
  ])('hold the trial to the vertical dimension of the record: %p, then %p mm is a %s', (then, later, verdict) => {
    const facts = { milestones: ['trial'], arches: ['upper', 'lower'], earlier: [height(now.code, then)] } as const;
    const found = evaluateStage({ readings: [height(now.code, later)], facts });
    expect(found.find(({ rule }) => rule === 'vertical-dimension-kept')).toMatchObject({ verdict, blocks: false });
  });
});
