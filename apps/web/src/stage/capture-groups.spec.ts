import { clashesOf, rebased } from '../drafts/rebase.js';
import { noRecords, readRecords, recordedBoxes, recordsSince, type Boxes } from './capture-draft.js';
import { captureClashes, fromGroups, readGroups, toGroups } from './capture-groups.js';
import { aField, aStage } from './stage.builder.js';
import { nextTracing } from './tracing-view.js';

const at = '2027-01-05T09:00:00Z';
const marks = { key: 'landmarks', question: 'Between', options: ['nose-chin', 'lip-chin'], required: true };
const height = (value: number, landmarks: string) => ({ code: 'rest', value, unit: 'mm', method: { landmarks }, at });
const width = (value: number) => ({ code: 'width', value, unit: 'mm', at });
const checklist = [
  { code: 'mucosa', text: 'Mucosa looked at', counted: false, done: false, count: null },
  { code: 'parts-in', text: 'Parts that came in', counted: true, done: false, count: 2 },
];
const visit = (...readings: ReturnType<typeof aStage>['readings']) =>
  aStage({
    fields: [
      aField({ readings: 2, method: [marks] }),
      aField({ code: 'width', name: 'Width', readings: 1, arches: ['upper', 'lower'] }),
    ],
    checklist,
    readings,
  });
const recorded = (view: ReturnType<typeof visit>) => toGroups(view, recordedBoxes(view));

const before = visit(height(70, 'nose-chin'), height(71, 'nose-chin'));
const type = (part: Partial<Boxes['values']>) => {
  const boxes = recordedBoxes(before);
  return toGroups(before, { ...boxes, values: { ...boxes.values, ...(part as Boxes['values']) } });
};

it('gives back the boxes that it was made of', () => {
  const { values, ticks, counts } = fromGroups(before, recorded(before));
  expect(values).toMatchObject({ 'rest||||0': '70', 'rest||||1': '71', 'rest|method|landmarks': 'nose-chin' });
  expect(ticks).toEqual({ mucosa: false });
  expect(counts).toEqual({ 'parts-in': '2' });
});

it('keeps typed readings with their landmarks, and lets what nobody typed follow the record', () => {
  const typed = { base: recorded(before), mine: type({ 'rest||||0': '68' }) };
  const after = visit(height(60, 'lip-chin'), height(61, 'lip-chin'), { ...width(44), arch: 'upper' });
  const { values } = fromGroups(after, rebased(typed, recorded(after)));
  expect(values).toMatchObject({ 'rest||||0': '68', 'rest||||1': '71', 'rest|method|landmarks': 'nose-chin' });
  expect(values['width|upper|||0']).toBe('44');
});

it('shows both versions of what two people measured at once', () => {
  const typed = { base: recorded(before), mine: type({ 'rest||||0': '68', 'width|lower|||0': '50' }) };
  const after = visit(height(60, 'lip-chin'), height(61, 'lip-chin'), { ...width(44), arch: 'lower' });
  expect(captureClashes(after, clashesOf(typed, recorded(after)))).toEqual([
    { key: 'rest', label: 'Vertical dimension at rest', mine: '68, 71, nose chin', theirs: '60, 61, lip chin' },
    { key: 'width|lower|||0', label: 'Width, lower', mine: '50', theirs: '44' },
  ]);
});

it('measures of two arches are no clash', () => {
  const typed = { base: recorded(before), mine: type({ 'width|upper|||0': '50' }) };
  const after = visit({ ...width(44), arch: 'lower' });
  expect(clashesOf(typed, recorded(after))).toEqual([]);
});

it('takes back from the browser only what it can read', () => {
  const kept: unknown = JSON.parse(JSON.stringify(recorded(before)));
  expect(readGroups(kept)).toEqual(recorded(before));
  expect(readGroups({ rest: { box: 7 } })).toBeNull();
  const records = { ...noRecords, tracings: [nextTracing(undefined)] };
  expect(readRecords(JSON.parse(JSON.stringify(records)))).toEqual(records);
  expect(readRecords({ tracings: [7], centric: [] })).toBeNull();
});

it('keeps an attempt that was added while others were being saved, also one like them', () => {
  const attempt = nextTracing(undefined);
  const sent = { ...noRecords, tracings: [attempt, attempt] };
  expect(recordsSince(sent, sent)).toEqual(noRecords);
  const now = { ...sent, tracings: [attempt, attempt, attempt, { ...attempt, pain: true }] };
  expect(recordsSince(now, sent).tracings).toEqual([attempt, { ...attempt, pain: true }]);
});
