import { measurementByCode } from '@archwright/measures';
import { emptyDraft, type CaptureDraft } from './capture-draft.js';
import { readCapture } from './capture-view.js';
import { liveFindings } from './finding-view.js';
import { aField, aStage, aTracing } from './stage.builder.js';

const REST = 'vertical-dimension-at-rest';
const OCCLUSAL = 'occlusal-vertical-dimension';
const asMeasured = { landmarks: 'subnasale-gnathion', posture: 'upright-unsupported' };
const field = (code: string) =>
  aField({
    code,
    readings: 1,
    method: measurementByCode(code).method.map((each) => ({ ...each, options: [...each.options] })),
  });
const view = aStage({
  fields: [field(REST), field(OCCLUSAL)],
  readings: [{ code: REST, value: 68, unit: 'mm', method: asMeasured, at: '2027-01-05T09:00:00Z' }],
});
const typedOcclusal = (text: string, landmarks = asMeasured.landmarks): CaptureDraft => ({
  ...emptyDraft,
  values: {
    [`${OCCLUSAL}||||0`]: text,
    [`${OCCLUSAL}|method|landmarks`]: landmarks,
    [`${OCCLUSAL}|method|posture`]: asMeasured.posture,
  },
});
const live = (typed: CaptureDraft) => liveFindings(view, readCapture(view, typed, null));

it('judges what is typed together with what is recorded, as the server will', () => {
  const lost = live(typedOcclusal('68'));
  expect(lost.findings[0]).toMatchObject({
    rule: 'interocclusal-rest-distance',
    verdict: 'fail',
    action: 'correct-in-chair',
    value: '0 mm',
  });
  const corrected = live(typedOcclusal('65'));
  expect(corrected.findings.map(({ rule, verdict }) => [rule, verdict])).toContainEqual([
    'interocclusal-rest-distance',
    'pass',
  ]);
  expect(corrected.derived).toEqual([expect.objectContaining({ value: 3, unit: 'mm' })]);
});

it.each([
  ['a value that no body has', typedOcclusal('650')],
  ['half a number', typedOcclusal('6,')],
  ['a length without its landmarks', typedOcclusal('65', '')],
])('leaves out %s: its box says what it would accept', (_, typed) => {
  expect(live(typed).findings.some(({ rule }) => rule === 'interocclusal-rest-distance')).toBe(false);
});

it('counts failed tracings over what is recorded and what is typed, the worst first', () => {
  const attempt = { ...EMPTY, apex: 'none' as const };
  const { findings } = liveFindings(aStage({ tracings: [aTracing(attempt), aTracing(attempt)] }), {
    body: { readings: [], checklist: {}, tracings: [attempt], otherCentricRelation: [] },
    entries: [attempt],
  });
  expect(findings[0]).toMatchObject({ verdict: 'fail', action: 'return-to-stage' });
  expect(findings[0]?.reason).toContain('3 failed in this visit');
});

const EMPTY = {
  stylusOn: 'lower',
  view: 'as-worn',
  posture: 'upright',
  basesMoved: false,
  contact: false,
  pain: false,
} as const;
