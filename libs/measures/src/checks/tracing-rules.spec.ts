import type { Reading } from '../readings/reading.js';
import { evaluateStage } from './evaluate-stage.js';
import { centricRelationInForce } from './tracing-rules.js';
import type { StageFacts, TracingEntry } from './stage.js';

const clean: TracingEntry = { apex: 'single', form: 'typical', basesMoved: false, contact: false, pain: false };
const marks = 'subnasale-gnathion';
const occlusal = (value: number): Reading => ({
  code: 'occlusal-vertical-dimension',
  value,
  method: { landmarks: marks },
});

function judge(facts: Partial<StageFacts>, readings: readonly Reading[] = []) {
  const verdicts = evaluateStage({
    readings,
    facts: { milestones: ['jaw-relation'], arches: ['upper', 'lower'], ...facts },
  });
  return verdicts.find((verdict) => verdict.rule === 'centric-relation-record');
}

describe('tracing verdict', () => {
  it('passes a clean tracing', () => {
    expect(judge({ tracings: [clean] })).toMatchObject({ verdict: 'pass', blocks: false });
  });

  it.each<[string, Partial<TracingEntry>]>([
    ['no apex', { apex: 'none' }],
    ['double apex', { apex: 'double' }],
    ['the bases moved', { basesMoved: true }],
    ['rims or bases touched', { contact: true }],
    ['pain', { pain: true }],
  ])('blocks and repeats for %s', (words, defect) => {
    const verdict = judge({ tracings: [{ ...clean, ...defect }] });
    expect(verdict).toMatchObject({ verdict: 'fail', blocks: true, action: 'repeat' });
    expect(verdict?.reason).toContain(words);
    expect(verdict?.trigger).toBeUndefined();
  });

  it('takes unpublished limits as cautions only, however far beyond', () => {
    const wild: TracingEntry = {
      ...clean,
      form: 'rounded',
      roundingRadiusMm: 3,
      armRmsMm: 2,
      asymmetryDeg: 40,
      dorsalExtensionMm: 3,
      closures: { count: 3, rmsMm: 2, maxPairMm: 4 },
      offsetMm: 4,
    };
    const verdict = judge({ tracings: [wild] });
    expect(verdict).toMatchObject({ verdict: 'caution', blocks: false });
    expect(verdict?.reason).toContain('closure scatter 2 mm');
  });

  it('sends the case back after the third failed tracing of the visit', () => {
    const failed: TracingEntry = { ...clean, apex: 'none' };
    expect(judge({ tracings: [failed, failed] })).toMatchObject({ action: 'repeat', value: 2 });
    expect(judge({ tracings: [failed, failed, failed] })).toMatchObject({
      action: 'return-to-stage',
      trigger: 'jaw-relation-not-recorded',
      value: 3,
    });
    expect(judge({ tracings: [failed, failed, clean] })?.verdict).toBe('pass');
  });

  it('takes another centric relation method in the same visit as an ordinary pass, but not over pain', () => {
    const other = [{ method: 'bimanual-guidance' as const }];
    expect(judge({ tracings: [{ ...clean, apex: 'none' }], otherCentricRelation: other })).toMatchObject({
      verdict: 'pass',
      value: 'bimanual-guidance',
    });
    expect(judge({ otherCentricRelation: other })?.verdict).toBe('pass');
    expect(judge({ tracings: [{ ...clean, pain: true }], otherCentricRelation: other })?.verdict).toBe('fail');
  });

  it('asks for a look where the closures of another method do not agree, as beside a tracing, and never blocks', () => {
    const withClosures = (closures: { count: number; rmsMm: number; maxPairMm: number }) =>
      judge({ otherCentricRelation: [{ method: 'swallowing', closures }] });
    expect(withClosures({ count: 5, rmsMm: 0.3, maxPairMm: 0.8 })?.verdict).toBe('pass');
    const apart = withClosures({ count: 4, rmsMm: 0.4, maxPairMm: 0.9 });
    expect(apart).toMatchObject({ verdict: 'caution', blocks: false, action: 'go-on', value: 'swallowing' });
    expect(apart?.reason).toBe(
      'Centric relation recorded by swallowing in this visit, with care: closure scatter 0.4 mm (up to 0.3 mm); ' +
        'widest closure pair 0.9 mm (up to 0.8 mm); 4 closures (5 wanted). Record again if closures do not agree.',
    );
  });

  it('is void at a new occlusal vertical dimension, and so is any other record', () => {
    const occlusalVerticalDimension = { valueMm: 65, landmarks: marks };
    const tracings = [{ ...clean, occlusalVerticalDimension }];
    expect(judge({ tracings }, [occlusal(65)])?.verdict).toBe('pass');
    expect(judge({ tracings }, [occlusal(66)])).toMatchObject({ verdict: 'fail', blocks: true, action: 'repeat' });
    expect(judge({ tracings: [{ ...clean, verticalDimensionChangedAfter: true }] })?.verdict).toBe('fail');
    const otherCentricRelation = [{ method: 'swallowing' as const, occlusalVerticalDimension }];
    expect(judge({ otherCentricRelation }, [occlusal(66)])?.verdict).toBe('fail');
    expect(judge({ tracings, milestones: ['trial'] }, [occlusal(66)])).toMatchObject({
      action: 'return-to-stage',
      trigger: 'jaw-relation-wrong-at-trial',
    });
  });

  it('does not compare a tracing made on other landmarks', () => {
    const tracings = [{ ...clean, occlusalVerticalDimension: { valueMm: 65, landmarks: 'nose-tip-chin' } }];
    expect(judge({ tracings }, [occlusal(65)])).toMatchObject({ verdict: 'caution', action: 'repeat' });
  });
});

describe('centric relation in force', () => {
  it('is the latest usable tracing, else another method, else none', () => {
    const failed: TracingEntry = { ...clean, apex: 'none' };
    const otherCentricRelation = [{ method: 'swallowing' as const }];
    expect(centricRelationInForce({ tracings: [failed, clean], otherCentricRelation })).toBe('tracing');
    expect(centricRelationInForce({ tracings: [clean, failed], otherCentricRelation })).toBe('swallowing');
    expect(centricRelationInForce({ tracings: [failed] })).toBeNull();
  });
});

describe('before the tracing', () => {
  const risk = (facts: Partial<StageFacts>, readings: readonly Reading[] = []) =>
    evaluateStage({ readings, facts: { milestones: ['jaw-relation'], arches: ['upper'], ...facts } }).find(
      (verdict) => verdict.rule === 'tracing-risk-explained',
    );

  it('wants the injury risk explained before the set is mounted', () => {
    expect(risk({ tracingPlanned: true })).toMatchObject({ verdict: 'fail', blocks: true });
    expect(risk({ tracingPlanned: true }, [{ code: 'tracing-risk-explained', value: true }])?.verdict).toBe('pass');
    expect(risk({ tracings: [clean] })).toMatchObject({ verdict: 'caution', blocks: false });
    expect(risk({})).toBeUndefined();
  });

  it('wants the impression passed before a tracing in a combined visit', () => {
    const order = (value: string) =>
      evaluateStage({
        readings: [{ code: 'impression-result', value, arch: 'upper' }],
        facts: { milestones: ['final-impression', 'jaw-relation'], arches: ['upper'], tracings: [clean] },
      }).find((verdict) => verdict.rule === 'impression-before-tracing');
    expect(order('passed')?.verdict).toBe('pass');
    expect(order('tear')).toMatchObject({ verdict: 'fail', blocks: true });
  });
});
