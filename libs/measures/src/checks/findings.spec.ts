import { DerivedValueError, InvalidValueError, TooFewReadingsError } from '../errors.js';
import type { MilestoneKind } from '../measurement.js';
import type { Reading } from '../readings/reading.js';
import { CHECK_RULES, evaluateStage } from './evaluate-stage.js';
import { explainMeasurement } from './explain.js';
import { LOOP_TRIGGERS, loopForTrigger, overallVerdict, verdictsInForce } from './verdict.js';

function judge(rule: string, milestone: MilestoneKind, readings: readonly Reading[]) {
  return evaluateStage({ readings, facts: { milestones: [milestone], arches: ['upper', 'lower'] } }).find(
    (verdict) => verdict.rule === rule,
  );
}
const upper = (code: string, value: Reading['value']): Reading => ({ code, value, arch: 'upper' });

describe('edentulous index', () => {
  // Classes by height: McGarry, J Prosthodont 1999;8:27.
  it.each([
    [12, '2', 'caution'],
    [12, '3', 'pass'],
    [12, '4', 'pass'],
    [22, '1', 'pass'],
  ])('with a mandible of %p mm stated as %s is a %s', (value, stated, verdict) => {
    const readings = [
      { code: 'mandibular-bone-height', value },
      { code: 'prosthodontic-diagnostic-index', value: stated },
    ];
    expect(judge('diagnostic-index', 'examination', readings)).toMatchObject({ verdict, blocks: false });
  });
});

describe('findings', () => {
  it.each<[string, MilestoneKind, Reading, object]>([
    [
      'tray-fit',
      'final-impression',
      upper('tray-fit', 'rocks'),
      { verdict: 'fail', trigger: 'tray-does-not-fit', action: 'return-to-stage' },
    ],
    ['tray-fit', 'final-impression', upper('tray-fit', 'over-extended'), { verdict: 'caution', blocks: false }],
    ['final-impression', 'final-impression', upper('impression-result', 'tear'), { verdict: 'fail', action: 'repeat' }],
    [
      'final-impression',
      'final-impression',
      upper('impression-result', 'passed'),
      { verdict: 'pass', action: 'go-on' },
    ],
    [
      'base-stability',
      'jaw-relation',
      upper('base-stability', 'lifts'),
      { verdict: 'fail', trigger: 'base-does-not-fit' },
    ],
    [
      'base-stability',
      'jaw-relation',
      upper('base-stability', 'rim-loose'),
      { verdict: 'fail', trigger: 'rim-unstable', action: 'correct-in-chair' },
    ],
    ['base-stability', 'jaw-relation', upper('rocking', true), { verdict: 'fail', value: 'rocks' }],
    ['base-plate-findings', 'jaw-relation', upper('frenum-relief', 'relief-needed'), { verdict: 'caution' }],
    ['base-plate-findings', 'jaw-relation', { code: 'parallel-closure', value: false }, { verdict: 'caution' }],
    ['base-plate-findings', 'jaw-relation', upper('re-seat-check', 'does-not-seat'), { verdict: 'fail', blocks: true }],
    ['contact-and-pain', 'jaw-relation', { code: 'pain-on-closing', value: true }, { verdict: 'fail', blocks: true }],
    [
      'contact-and-pain',
      'jaw-relation',
      { code: 'rim-or-base-contact', value: true },
      { verdict: 'fail', blocks: true },
    ],
    [
      'borders',
      'placement',
      { code: 'border-extension', value: 'short', region: 'upper-labial' },
      { verdict: 'caution', region: 'upper-labial' },
    ],
    ['stomatitis-gate', 'examination', upper('NEWTON', '2'), { verdict: 'caution' }],
    ['stomatitis-gate', 'final-impression', upper('NEWTON', '1'), { verdict: 'caution', blocks: false }],
    ['stomatitis-gate', 'final-impression', upper('NEWTON', '2'), { verdict: 'fail', trigger: 'mucosa-not-healthy' }],
    [
      'tissue-state',
      'final-impression',
      upper('tissue-state', 'displaced'),
      { verdict: 'fail', trigger: 'mucosa-not-healthy' },
    ],
    [
      'centric-relation-agreement',
      'trial',
      { code: 'centric-relation-agreement', value: 'differs' },
      { trigger: 'jaw-relation-wrong-at-trial' },
    ],
    [
      'centric-relation-agreement',
      'placement',
      { code: 'centric-relation-agreement', value: 'differs' },
      { trigger: 'jaw-relation-wrong-after-cure' },
    ],
    [
      'patient-acceptance',
      'trial',
      { code: 'patient-acceptance', value: 'refused' },
      { trigger: 'looks-refused', action: 'return-to-stage' },
    ],
    ['patient-acceptance', 'trial', { code: 'patient-acceptance', value: 'accepted' }, { verdict: 'caution' }],
    [
      'occlusion',
      'placement',
      { code: 'occlusion', value: 'small-error' },
      { verdict: 'caution', trigger: 'occlusion-small-error' },
    ],
    ['usual-range', 'trial', { code: 'midline-offset', value: 2 }, { verdict: 'pass' }],
    ['usual-range', 'trial', { code: 'midline-offset', value: 2.5 }, { verdict: 'caution', blocks: false }],
    ['interpupillary-plane', 'trial', { code: 'IPL', value: -2.5 }, { verdict: 'caution', action: 'correct-in-chair' }],
    ['interpupillary-plane', 'trial', { code: 'IPL', value: 4 }, { verdict: 'caution', action: 'repeat' }],
    [
      'ala-tragus-plane',
      'trial',
      { code: 'CAMP', value: 9, side: 'left', method: { 'tragus-point': 'middle' } },
      { verdict: 'caution', action: 'repeat', side: 'left' },
    ],
  ])('%s at %s judges %j', (rule, milestone, reading, expected) => {
    expect(judge(rule, milestone, [reading])).toMatchObject(expected);
  });

  it('asks for a new visit after the second failed impression', () => {
    const twice = [upper('impression-result', 'void-on-stress-area'), upper('impression-tries', 2)];
    expect(judge('final-impression', 'final-impression', twice)).toMatchObject({
      action: 'return-to-stage',
      trigger: 'impression-flawed',
    });
  });

  it('accepts a trial with who decided', () => {
    const readings = [
      { code: 'patient-acceptance', value: 'accepted' },
      { code: 'acceptance-decided-by', value: 'legal-representative' },
    ];
    expect(judge('patient-acceptance', 'trial', readings)).toMatchObject({
      verdict: 'pass',
      reason: 'Accepted by: legal representative.',
    });
  });

  it('cautions about canine lines more than 2 mm apart', () => {
    const lines = (right: number, left: number) => [
      { code: 'CAN', value: right, side: 'right' as const },
      { code: 'CAN', value: left, side: 'left' as const },
    ];
    expect(judge('canine-line-symmetry', 'jaw-relation', lines(18, 20))?.verdict).toBe('pass');
    expect(judge('canine-line-symmetry', 'jaw-relation', lines(17, 20))).toMatchObject({
      verdict: 'caution',
      value: -3,
    });
  });

  it('sums retention and stability of both dentures and never mixes variants', () => {
    const grade = (arch: 'upper' | 'lower', what: string, value: number, variant = 'kapur-olshan'): Reading => ({
      code: `kapur-${what}`,
      value,
      arch,
      method: { variant },
    });
    const inVariant = (variant: string) =>
      (['upper', 'lower'] as const).flatMap((arch) => [
        grade(arch, 'retention', 2, variant),
        grade(arch, 'stability', 1, variant),
      ]);
    // A modified index has grades of its own, which nobody may add up and hold against this limit.
    expect(judge('retention-and-stability', 'placement', inVariant('modified'))).toBeUndefined();
    expect(judge('retention-and-stability', 'placement', inVariant('kapur-1967'))?.value).toBe(6);
    const set = (lowerStability: number, variant?: string) => [
      grade('upper', 'retention', 2),
      grade('upper', 'stability', 2),
      grade('lower', 'retention', 1),
      grade('lower', 'stability', lowerStability, variant),
    ];
    expect(judge('retention-and-stability', 'placement', set(1))).toMatchObject({ verdict: 'caution', value: 6 });
    expect(judge('retention-and-stability', 'placement', set(2))).toMatchObject({ verdict: 'pass', value: 7 });
    expect(judge('retention-and-stability', 'placement', set(2, 'modified'))).toMatchObject({
      verdict: 'caution',
      value: null,
    });
    const between = judge('retention-and-stability', 'placement', [...set(2), grade('upper', 'retention', 3)]);
    expect(between?.reason).toContain('2.5 is no grade');
  });

  it('judges by the group where a range is published for one', () => {
    const space = { code: 'CSS', value: 4 };
    expect(judge('usual-range', 'trial', [space])?.verdict).toBe('caution');
    const facts = { milestones: ['trial'] as const, arches: [], person: { skeletalClass: 'class-ii' as const } };
    expect(overallVerdict(evaluateStage({ readings: [space], facts }))).toBe('pass');
  });
});

describe('rules', () => {
  it('have each code once and a source', () => {
    expect(new Set(CHECK_RULES.map((rule) => rule.code)).size).toBe(CHECK_RULES.length);
    expect(CHECK_RULES.every((rule) => rule.source.text.length > 5 && rule.cautionText.length > 5)).toBe(true);
  });

  it('say nothing when nothing was captured', () => {
    const facts = { milestones: ['jaw-relation', 'trial', 'placement'] as const, arches: ['upper', 'lower'] as const };
    expect(evaluateStage({ readings: [], facts })).toEqual([]);
  });

  it('carry the practice’s version', () => {
    const facts = { milestones: ['trial'] as const, arches: [] };
    const overlay = { version: 4, usual: { MID: { min: 0, max: 3 } } };
    const [verdict] = evaluateStage({ readings: [{ code: 'MID', value: 2.5 }], facts, overlay });
    expect(verdict).toMatchObject({ verdict: 'pass', ruleVersion: '1+p4', standing: 'project default' });
  });

  it('let a later passed check replace an earlier finding of the same subject only', () => {
    const at = (arch: 'upper' | 'lower', value: string) =>
      evaluateStage({
        readings: [{ code: 'base-stability', value, arch }],
        facts: { milestones: ['jaw-relation'], arches: [arch] },
      });
    const both = [...at('upper', 'rocks'), ...at('lower', 'rocks')];
    const inForce = verdictsInForce(both, at('upper', 'stable'));
    expect(inForce.map(({ arch, verdict }) => [arch, verdict])).toEqual([
      ['upper', 'pass'],
      ['lower', 'fail'],
    ]);
  });
});

describe('triggers', () => {
  it('find the loop of a path or the one that means the same there', () => {
    expect(loopForTrigger('tray-does-not-fit', ['base-does-not-fit', 'tray-does-not-fit'])).toBe('tray-does-not-fit');
    expect(loopForTrigger('tray-does-not-fit', ['base-does-not-fit'])).toBe('base-does-not-fit');
    expect(loopForTrigger('rim-unstable', ['impression-flawed'])).toBe('impression-flawed');
    expect(loopForTrigger('looks-refused', ['impression-flawed'])).toBeNull();
    expect(LOOP_TRIGGERS.every((trigger) => loopForTrigger(trigger, LOOP_TRIGGERS) === trigger)).toBe(true);
  });
});

describe('an explanation', () => {
  it('computes the rest distance from its parts and judges it', () => {
    const { values, verdicts } = explainMeasurement('IRD', ['70', '63']);
    expect(values).toEqual([7]);
    expect(verdicts[0]).toMatchObject({ rule: 'interocclusal-rest-distance', verdict: 'caution' });
    expect(explainMeasurement('IRD', ['0']).verdicts[0]).toMatchObject({ verdict: 'fail' });
  });

  it('summarises three readings', () => {
    const { summary, verdicts } = explainMeasurement('VDR', ['67.0', '68.5', '66.0']);
    expect(summary).toMatchObject({ median: 67, spread: 2.5, count: 3 });
    expect(verdicts.find((verdict) => verdict.rule === 'repeated-vertical-readings')?.action).toBe('repeat');
  });

  it('names what it had to assume and refuses what it cannot read', () => {
    expect(explainMeasurement('NEWTON', ['2']).assumed).toEqual(['arch upper']);
    expect(() => explainMeasurement('OVD', ['sixty'])).toThrow(InvalidValueError);
    expect(() => explainMeasurement('OVD', [''])).toThrow(InvalidValueError);
    expect(() => explainMeasurement('IRD', ['', '65'])).toThrow(InvalidValueError);
    expect(explainMeasurement('OVD', ['65,5']).values).toEqual([65.5]);
    expect(() => explainMeasurement('OVD', [])).toThrow(TooFewReadingsError);
    expect(() => explainMeasurement('OHIP', ['20'])).toThrow(DerivedValueError);
  });
});

describe('ranges that differ between women and men', () => {
  it.each([
    ['female', 'pass', 'the range given for women'],
    ['male', 'caution', 'the range given for men'],
    [null, 'pass', null],
  ] as const)('of a nasolabial angle of 103 degrees, sex %p: %s', (sex, verdict, said) => {
    const [found] = evaluateStage({
      readings: [{ code: 'nasolabial-angle', value: 103 }],
      facts: { milestones: ['jaw-relation'], arches: ['upper'], ...(sex === null ? {} : { person: { sex } }) },
    }).filter(({ measurement }) => measurement === 'nasolabial-angle');
    expect(found?.verdict).toBe(verdict);
    if (said === null) expect(found?.source).not.toMatch(/women|men\b/);
    else expect(found?.source).toContain(said);
  });
});
