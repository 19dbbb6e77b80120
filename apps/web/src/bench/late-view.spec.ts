import { lateBody, lateStart } from './late-view.js';

const ENDS = '2027-07-05T11:00:00Z';
const start = lateStart({ endsAt: ENDS }, 'Europe/London', '2027-07-05');
const before = Date.parse('2027-07-05T08:00:00Z');

it('begins a day after the planned end, and never with a day that is over', () => {
  expect(start.draft).toEqual({ day: '2027-07-06', time: '12:00', reason: '' });
  expect(start.planned).toContain('Mon 5 Jul, 12:00');
  expect(lateStart({ endsAt: ENDS }, 'Europe/London', '2027-07-20').draft.day).toBe('2027-07-20');
});

it.each([
  ['a later time and a reason, by the laboratory’s clock', { time: '12:07' }, '2027-07-06T11:07:00Z'],
  ['no reason', { reason: ' ' }, null],
  ['the planned end itself', { day: '2027-07-05' }, null],
  ['no time', { time: '' }, null],
])('with %s sends %j', (_, change, readyAt) => {
  const body = lateBody({ ...start.draft, reason: ' The printer is down. ', ...change }, start, before);
  expect(body).toEqual(readyAt === null ? null : { readyAt, reason: 'The printer is down.' });
});

it('is not late by an instant that is over', () => {
  const draft = { ...start.draft, reason: 'The printer is down.' };
  expect(lateBody(draft, start, Date.parse('2027-07-06T11:30:00Z'))).toBeNull();
});
