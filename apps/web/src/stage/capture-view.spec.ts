import type { StageView } from '@archwright/contracts';
import * as evaluator from '../tracing-pad/drawn-tracing.js';
import { captureFields, landmarkOptions } from './capture-boxes.js';
import { emptyDraft as blank, recordedBoxes, type CaptureDraft } from './capture-draft.js';
import { readCapture as readWith } from './capture-view.js';
import { centricInWords, nextCentric, readCentric } from './centric-view.js';
import { aField as field, aStage as stage, aTracing } from './stage.builder.js';
import { conditionsOf, entryOf, nextDrawing, nextTracing, readTracing, tracingInWords } from './tracing-view.js';
import { typedNumber } from './typed-number.js';

const readCapture = (view: StageView, typed: CaptureDraft) => readWith(view, typed, null);

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
    const entries = captureFields(stage({ fields: [field({ arches: ['upper', 'lower'], readings: 2 })] }))[0]?.entries;
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
    const read = readCapture(stage({}), { ...blank, values: { 'rest||||0': '70', 'rest||||1': '70,5' } });
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
    const read = readCapture(stage({}), { ...blank, values: { 'rest||||0': '7', 'rest||||1': 'seventy' } });
    expect(read).toMatchObject({
      isChanged: true,
      errors: {
        'rest||||0': 'Enter a number from 40 to 100 mm. Was it read in centimetres? Then it is 70 mm.',
        'rest||||1': 'Enter a number such as 3.5.',
      },
    });
  });

  it('counts parts as whole numbers and ticks as yes or no', () => {
    const view = stage({
      checklist: [
        { code: 'parts-in', text: '', counted: true, done: false, count: null },
        { code: 'mucosa', text: '', counted: false, done: false, count: null },
      ],
    });
    expect(readCapture(view, { ...blank, ticks: { mucosa: true }, counts: { 'parts-in': '4' } })).toMatchObject({
      body: { checklist: { 'parts-in': 4, mucosa: true } },
    });
    expect(readCapture(view, { ...blank, counts: { 'parts-in': '-1' } })).toHaveProperty([
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
  expect(recordedBoxes(stage({ readings })).values).toEqual({
    'rest||||0': '70',
    'rest||||1': '71',
    'rest||||2': '72',
  });
});

it('asks how it was measured where readings are only comparable under the same answer', () => {
  const method = [{ key: 'landmarks', question: 'Between', options: ['nose-chin'], required: true }];
  const view = stage({ fields: [field({ method })] });
  const values = { 'rest||||0': '70' };
  expect(readCapture(view, { ...blank, values })).toHaveProperty(['errors', 'rest|method|landmarks']);
  expect(readCapture(view, { ...blank, values: { ...values, 'rest|method|landmarks': 'nose-chin' } })).toMatchObject({
    body: { readings: [{ method: { landmarks: 'nose-chin' } }] },
  });
  expect(landmarkOptions(view)).toEqual([{ value: 'nose-chin', label: 'nose chin' }]);
});

describe('tracings', () => {
  const attempt = nextTracing(undefined);

  it('starts the next attempt from the conditions of the last, not from its findings', () => {
    const next = nextTracing({ ...attempt, posture: 'supine', contact: true, closureRmsMm: '1.4' });
    expect(next).toMatchObject({ posture: 'supine', contact: false, closureRmsMm: '' });
  });

  it('of one that is drawn sends its points alone, and what no drawing shows', () => {
    const points = [1, 2, 3].flatMap((step) => [
      { phase: 'right' as const, x: step, y: step },
      { phase: 'left' as const, x: -step, y: step },
    ]);
    const errors: Record<string, string> = {};
    const drawn = { ...nextDrawing(attempt), contact: true, form: 'flat' as const, offsetMm: '3', points };
    const [given] = readTracing(drawn, 't', errors, evaluator);
    expect(given).toMatchObject({ contact: true, points });
    expect(given).not.toHaveProperty('apex');
    expect(given).not.toHaveProperty('form');
    expect(given).not.toHaveProperty('offsetMm');
    expect(readTracing({ ...drawn, points: points.slice(0, 2) }, 't', errors, evaluator)).toEqual([]);
    expect(errors).toEqual({ 't|points': 'Tracing: 2 points given, at least 6 are needed.' });
    expect(given && entryOf(given, evaluator)).toMatchObject([{ apex: 'single', contact: true }]);
    expect(readTracing(drawn, 't', errors, null)).toEqual([]);
    expect(errors).toEqual({ 't|points': 'Fetching what reads the drawing …' });
  });

  it('leaves out what is not known and takes closures as one finding', () => {
    const closures = { closureCount: '5', closureRmsMm: '0,6', closureMaxPairMm: '1.1' };
    const errors: Record<string, string> = {};
    expect(readTracing({ ...attempt, ...closures }, 't', errors, null)).toEqual([
      {
        stylusOn: 'upper',
        view: 'as-worn',
        posture: 'upright',
        apex: 'single',
        basesMoved: false,
        contact: false,
        pain: false,
        verticalDimensionChangedAfter: false,
        closures: { count: 5, rmsMm: 0.6, maxPairMm: 1.1 },
      },
    ]);
    expect(errors).toEqual({});
  });

  it.each([
    [{ closureCount: '5' }, ['t|closureRmsMm', 't|closureMaxPairMm']],
    [{ asymmetryDeg: '200' }, ['t|asymmetryDeg']],
    [{ dimensionMm: '10' }, ['t|dimensionMm']],
    [{ dimensionMm: '66' }, ['t|landmarks']],
  ])('refuses %j at its own boxes', (wrong, boxes) => {
    const errors: Record<string, string> = {};
    readTracing({ ...attempt, ...wrong }, 't', errors, null);
    expect(Object.keys(errors)).toEqual(boxes);
  });

  it('are said in one line once they are saved, and give the next one their conditions', () => {
    const errors: Record<string, string> = {};
    const draft = { ...attempt, form: 'flat' as const, contact: true, dimensionMm: '66', landmarks: 'nose-chin' };
    const [given] = readTracing(draft, 't', errors, null);
    const saved = given && aTracing({ ...given, apex: 'single' });
    expect(saved && tracingInWords(saved)).toBe(
      'Apex single · Form flat · Rims or bases touched while tracing · at 66 mm',
    );
    expect(saved && conditionsOf(saved)).toEqual({ ...attempt, dimensionMm: '66', landmarks: 'nose-chin' });
    const record = { ...nextCentric(), method: 'swallowing' as const, dimensionMm: '66', landmarks: 'nose-chin' };
    expect(readCentric(record, 'c', errors).map(centricInWords)).toEqual(['swallowing · at 66 mm']);
    const closed = { ...record, closureCount: '5', closureRmsMm: '0.2', closureMaxPairMm: '0.5' };
    const [read] = readCentric(closed, 'c', errors);
    expect(read?.closures).toEqual({ count: 5, rmsMm: 0.2, maxPairMm: 0.5 });
    expect(errors).toEqual({});
    readCentric({ ...closed, closureMaxPairMm: '' }, 'c', errors);
    expect(Object.keys(errors)).toEqual(['c|closureMaxPairMm']);
  });
});

describe('what is recorded already', () => {
  const reading = (value: number, at = '2027-01-05T09:00:00Z') => ({ code: 'rest', value, unit: 'mm', at });
  const view = stage({
    readings: [reading(70), reading(70.5)],
    checklist: [{ code: 'mucosa', text: '', counted: false, done: true, count: null }],
  });

  it('is not sent again', () => {
    expect(readCapture(view, blank)).toMatchObject({ isChanged: false, body: { readings: [], checklist: {} } });
    const same = { ...blank, values: { 'rest||||0': '70 ' }, ticks: { mucosa: true } };
    expect(readCapture(view, same).isChanged).toBe(false);
  });

  it('is sent as a whole subject once one of its readings differs', () => {
    const { body } = readCapture(view, { ...blank, values: { 'rest||||1': '71' } });
    expect(body.readings.map(({ value }) => value)).toEqual([70, 71]);
  });

  it('is corrected and never emptied', () => {
    const { errors } = readCapture(view, { ...blank, values: { 'rest||||0': '', 'rest||||1': ' ' } });
    expect(errors).toEqual({ 'rest||||0': 'This is recorded already: enter the right value in its place.' });
  });
});
