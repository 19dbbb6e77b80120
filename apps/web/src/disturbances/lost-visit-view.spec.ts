import { canFallAway, lostVisitBody, lostVisitDraft } from './lost-visit-view.js';

const visit = {
  id: 'v',
  startsAt: '2027-07-05T08:00:00Z',
  endsAt: '2027-07-05T09:00:00Z',
  zone: 'Europe/London',
  state: 'missed' as const,
};
const now = Date.parse('2027-07-05T09:30:00Z');

it('begins with the same time of the next day, and knows why a missed visit was missed', () => {
  expect(lostVisitDraft(visit, '2027-07-05')).toEqual({
    day: '2027-07-06',
    time: '09:00',
    reason: 'The patient did not come.',
  });
  expect(lostVisitDraft({ ...visit, state: 'booked' }, '2027-07-20')).toMatchObject({ day: '2027-07-20', reason: '' });
});

it.each([
  ['a later day', {}, '2027-07-06T08:00:00Z'],
  ['a time that is over', { day: '2027-07-05', time: '10:15' }, null],
  ['a time off the five minutes', { time: '09:01' }, null],
  ['no reason', { reason: '' }, null],
])('with %s the patient can come again from %s', (_, change, again) => {
  const body = lostVisitBody({ ...lostVisitDraft(visit, '2027-07-05'), ...change }, visit, now);
  expect(body).toEqual(
    again === null
      ? null
      : { what: 'visit', id: 'v', startsAt: visit.startsAt, endsAt: again, reason: 'The patient did not come.' },
  );
});

it('does not let a patient come again during the visit that is lost', () => {
  const coming = { ...visit, state: 'booked' as const };
  const draft = { day: '2027-07-05', time: '09:30', reason: 'Ill.' };
  const before = Date.parse('2027-07-04T09:00:00Z');
  expect(lostVisitBody(draft, coming, before)).toBeNull();
  expect(lostVisitBody({ ...draft, time: '10:00' }, coming, before)).not.toBeNull();
});

it('lets only what is to come or was missed fall away', () => {
  const states = ['booked', 'missed', 'completed', 'cancelled', 'arrived', 'in-progress', 'provisional'] as const;
  expect(states.filter((state) => canFallAway({ state }))).toEqual(['booked', 'missed']);
});
