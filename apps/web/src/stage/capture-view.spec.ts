import type { StageView } from '@archwright/contracts';
import { captureFields, draftOfStage, readCapture } from './capture-view.js';
import { nextTracing, readTracing } from './tracing-view.js';
import { typedNumber } from './typed-number.js';

const field = (more: Partial<StageView['fields'][number]>): StageView['fields'][number] => ({
  code: 'rest',
  name: 'Vertical dimension at rest',
  kind: 'number',
  unit: 'mm',
  plausible: { min: 40, max: 100 },
  usual: { min: 55, max: 80 },
  choices: [],
  readings: 3,
  landmarks: [],
  perArch: false,
  caution: null,
  source: 'common practice, no source',
  ...more,
});
const stage = (more: Partial<StageView>): StageView => ({
  id: 's',
  version: 1,
  caseId: 'c',
  caseNumber: '26-0131',
  patientName: 'A. Example',
  birthOn: '1949-03-04',
  code: 'D2',
  title: 'Jaw relation',
  round: 1,
  state: 'in-progress',
  cautions: [],
  checklist: [],
  fields: [field({})],
  readings: [],
  derived: [],
  tracings: [],
  verdicts: [],
  checking: false,
  gates: [],
  mayGoOn: false,
  sentence: '',
  ...more,
});
const blank = { values: {}, ticks: {}, counts: {}, tracings: [] };

it.each([
  ['3.5', 3.5],
  ['3,5', 3.5],
  [' 70 ', 70],
  ['3.', null],
  ['1,234.5', null],
  ['', null],
  ['abc', null],
])('reads the number %j as %s', (text, value) => {
  expect(typedNumber(text)).toBe(value);
});

describe('captureFields', () => {
  it('asks three times where three readings are wanted, and for each arch of the case', () => {
    const entries = captureFields(stage({ fields: [field({ perArch: true, readings: 2 })] }), ['upper', 'lower'])[0]
      ?.entries;
    expect(entries?.map((entry) => entry.label)).toEqual([
      'upper, 1. reading',
      'upper, 2. reading',
      'lower, 1. reading',
      'lower, 2. reading',
    ]);
  });
});

describe('readCapture', () => {
  it('saves what was filled in, with unit, and leaves out empty boxes', () => {
    const read = readCapture(stage({}), [], { ...blank, values: { 'rest||0': '70', 'rest||1': '70,5' } });
    expect(read).toMatchObject({
      body: {
        readings: [
          { code: 'rest', value: 70, unit: 'mm' },
          { code: 'rest', value: 70.5, unit: 'mm' },
        ],
      },
    });
  });

  it('says at the box what would be accepted', () => {
    const read = readCapture(stage({}), [], { ...blank, values: { 'rest||0': '7', 'rest||1': 'seventy' } });
    expect(read).toEqual({
      errors: { 'rest||0': 'Enter a number from 40 to 100 mm.', 'rest||1': 'Enter a number such as 3.5.' },
    });
  });

  it('counts parts as whole numbers and ticks as yes or no', () => {
    const view = stage({
      checklist: [
        { code: 'parts-in', text: '', counted: true, done: false, count: null },
        { code: 'mucosa', text: '', counted: false, done: false, count: null },
      ],
    });
    expect(readCapture(view, [], { ...blank, ticks: { mucosa: true }, counts: { 'parts-in': '4' } })).toMatchObject({
      body: { checklist: { 'parts-in': 4, mucosa: true } },
    });
    expect(readCapture(view, [], { ...blank, counts: { 'parts-in': '-1' } })).toHaveProperty([
      'errors',
      'checklist|parts-in',
    ]);
  });
});

it('fills the form with the latest readings, earlier ones left out', () => {
  const readings = [69, 70, 71, 72].map((value, index) => ({
    code: 'rest',
    value,
    at: `2027-01-05T09:0${String(index)}:00Z`,
  }));
  expect(draftOfStage(stage({ readings }), []).values).toEqual({ 'rest||0': '70', 'rest||1': '71', 'rest||2': '72' });
});

describe('tracings', () => {
  it('starts the next attempt from the conditions of the last, not from its findings', () => {
    const next = nextTracing({ ...nextTracing(undefined), posture: 'supine', armsComplete: true, closureRmsMm: '1.4' });
    expect(next).toMatchObject({ posture: 'supine', armsComplete: false, closureRmsMm: '' });
  });

  it('refuses what is out of range and saves the rest', () => {
    const draft = { ...nextTracing(undefined), closurePoints: '5', closureRmsMm: '0,6' };
    expect(readTracing(draft, 2)).toMatchObject({ entry: { attempt: 2, closurePoints: 5, closureRmsMm: 0.6 } });
    expect(readTracing({ ...draft, closurePoints: '5.5', occlusalVerticalDimensionMm: '10' }, 1)).toHaveProperty([
      'errors',
    ]);
  });
});
