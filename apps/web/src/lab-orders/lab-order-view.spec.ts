import type { LabOrderView } from '@archwright/contracts';
import { careOf, orderAction, shapeOrders, toOrder } from './lab-order-view.js';

const order = (more: Partial<LabOrderView>): LabOrderView => ({
  id: 'o',
  version: 1,
  state: 'ordered',
  caseNumber: '27-0004',
  caseId: null,
  laboratoryName: null,
  sentAt: '2027-07-05T08:00:00Z',
  neededBy: '2027-07-12T08:30:00Z',
  promisedAt: null,
  declineReason: null,
  sentence: '',
  values: [],
  order: {
    practice: 'Riverside',
    clinic: 'North clinic',
    stage: 'D1',
    round: 1,
    arches: ['upper', 'lower'],
    steps: [
      { code: 'pour', title: 'Pour the casts', arches: ['upper', 'lower'], round: 1 },
      { code: 'tray', title: 'Custom trays', arches: ['upper', 'lower'], round: 1 },
    ],
    objects: [],
    prescription: {},
  },
  ...more,
});
const at = (instant: string) => Date.parse(instant);
const reader = {
  role: 'lab',
  zone: 'Europe/London',
  today: '2027-07-05',
  nowMs: at('2027-07-05T09:00:00Z'),
} as const;
const accepted = (more: Partial<LabOrderView>) =>
  order({ state: 'accepted', promisedAt: '2027-07-12T08:30:00Z', ...more });

it.each([
  ['an order of this morning', order({}), '2027-07-05T09:00:00Z', null],
  ['one that nobody has answered for a day', order({}), '2027-07-06T08:00:00Z', 'unanswered'],
  ['one that nobody has answered and that is needed', order({}), '2027-07-12T08:30:00Z', 'needed-past'],
  ['one promised in time', accepted({}), '2027-07-06T08:00:00Z', null],
  ['one promised late', accepted({ promisedAt: '2027-07-13T08:30:00Z' }), '2027-07-06T08:00:00Z', 'promised-late'],
  ['one that should be back', accepted({}), '2027-07-12T08:30:00Z', 'overdue'],
  ['one that is finished', accepted({ state: 'finished' }), '2027-07-20T08:30:00Z', null],
])('asks for a person over %s', (_, given, now, care) => {
  expect(careOf(given, at(now))).toBe(care);
});

it('puts what needs a person first, then what is needed first, and apart what is over', () => {
  const late = accepted({ id: 'late', neededBy: '2027-08-01T08:30:00Z', promisedAt: '2027-08-02T08:30:00Z' });
  const soon = order({ id: 'soon', neededBy: '2027-07-06T08:30:00Z' });
  const gone = order({ id: 'gone', state: 'declined', declineReason: 'No wax bench free' });
  const { out, over, sentence } = shapeOrders([gone, order({}), soon, late], reader);
  expect(out.map(({ id }) => id)).toEqual(['late', 'soon', 'o']);
  expect(over.map(({ id, declined }) => [id, declined])).toEqual([['gone', 'Declined: No wax bench free']]);
  expect(sentence).toBe('3 orders are under way, 1 needs a person.');
  expect(out[1]).toMatchObject({
    work: 'Pour the casts, Custom trays, both arches',
    facts: ['from Riverside, North clinic', 'sent Mon 5 Jul, 09:00', 'needed Tue 6 Jul, 09:30'],
    state: 'waits for an answer',
  });
});

it('lets the laboratory answer, the practice take back, and nobody touch what is over', () => {
  const keys = (given: LabOrderView, role: 'lab' | 'front-desk' | 'manager', nowMs = reader.nowMs) => {
    const { out, over } = shapeOrders([given], { ...reader, role, nowMs });
    return [...out, ...over].flatMap(({ choices }) => choices.map(({ key }) => key));
  };
  expect(keys(order({}), 'lab')).toEqual(['accept', 'accept-other', 'decline']);
  expect(keys(order({}), 'lab', at('2027-07-13T08:30:00Z'))).toEqual(['accept-other', 'decline']);
  expect(keys(accepted({}), 'lab')).toEqual(['finish', 'promise', 'decline']);
  const ours = order({ caseId: 'c', laboratoryName: 'Benchwork' });
  expect(keys(ours, 'front-desk')).toEqual(['withdraw']);
  expect(keys(ours, 'manager')).toEqual([]);
  expect(keys(order({ state: 'finished' }), 'lab')).toEqual([]);
});

it('promises by the time of day at which the work is needed', () => {
  const given = { reason: '', on: '2027-07-14' };
  const needed = order({});
  const zone = 'Europe/London';
  expect(orderAction({ ...given, key: 'accept' }, needed, zone)).toMatchObject({ promisedAt: needed.neededBy });
  expect(orderAction({ ...given, key: 'promise' }, needed, zone)).toEqual({
    action: 'promise',
    promisedAt: '2027-07-14T08:30:00Z',
  });
  expect(orderAction({ key: 'promise', reason: '', on: '' }, needed, zone)).toBeNull();
  expect(orderAction({ key: 'decline', reason: 'Full', on: '' }, needed, zone)).toEqual({
    action: 'decline',
    reason: 'Full',
  });
});

describe('an order to send', () => {
  const typed = (more: object) =>
    toOrder({ laboratoryId: 'lab', day: '', time: '', ...more }, 'stage', 'Europe/Berlin');

  it('is needed when the next visit begins, unless it says when', () => {
    expect(typed({}).body).toEqual({ stageId: 'stage', laboratoryId: 'lab' });
    expect(typed({ day: '2027-07-12', time: '08:30' }).body).toMatchObject({ neededBy: '2027-07-12T06:30:00Z' });
  });

  it.each([
    ['no laboratory', { laboratoryId: '' }, ['laboratoryId']],
    ['a day without a time', { day: '2027-07-12' }, ['time']],
    ['a time without a day', { time: '08:30' }, ['time']],
  ])('is not sent with %s', (_, more, fields) => {
    const { body, wrong } = typed(more);
    expect(body).toBeNull();
    expect(Object.keys(wrong)).toEqual(fields);
  });
});
