import type { AppointmentView, FreedTimeTaker } from '@archwright/contracts';
import { askedTime, askFor, chooseClinic, freedBy, takerRow } from './freed-time-view.js';

const id = '019b0000-0000-7000-8000-000000000001';
const practice = {
  clinics: [{ id, name: 'North', zone: 'Europe/London', chairs: [], clinicians: [{ id, name: 'Wren', skills: [] }] }],
};
const asked = { clinic: id, clinician: id, on: '2027-07-06', starts: '09:00', ends: '09:45' };

it('asks for the instants of the clinic’s wall clock', () => {
  expect(askedTime(practice, asked).query).toMatchObject({
    startsAt: '2027-07-06T08:00:00Z',
    endsAt: '2027-07-06T08:45:00Z',
  });
});

it.each([
  ['no clinician', { clinician: undefined }, ['clinician']],
  ['an unknown clinic', { clinic: 'elsewhere' }, ['clinic']],
  ['no day', { on: '' }, ['on']],
  ['an end before the start', { ends: '08:00' }, ['ends']],
  ['a time off the grid', { starts: '09:01' }, ['starts']],
])('asks nothing for %s, and says where', (_, part, fields) => {
  const { query, wrong } = askedTime(practice, { ...asked, ...part });
  expect([query, Object.keys(wrong)]).toEqual([null, fields]);
});

it('says what the visit and the placement gain', () => {
  const told: FreedTimeTaker['told'] = {
    code: 'freed-gain',
    values: { title: { title: 'Trial placement' }, placed: 14, days: 14, moved: 1 },
  };
  const taker = {
    before: '2027-07-20T08:00:00Z',
    startsAt: '2027-07-06T08:00:00Z',
    deliveryBefore: '2027-08-20',
    deliveryOn: '2027-08-06',
    told,
  } as FreedTimeTaker;
  expect(takerRow(taker, 'Europe/London', '2027-07-01')).toMatchObject({
    sentence: 'Placement 14 days earlier. Trial placement: 14 days earlier. No other visit moves.',
    move: 'now Tue 20 Jul, 09:00, then Tue 6 Jul, 09:00',
    placement: 'placement Fri 20 Aug, then Fri 6 Aug',
  });
  expect(takerRow({ ...taker, deliveryOn: null }, 'Europe/London', '2027-07-01').placement).toBeNull();
});

it('asks for the time that a visit leaves, and not its own case to come back', () => {
  const visit = { clinicId: id, clinicianId: id, caseId: 'c', zone: 'Europe/London' } as AppointmentView;
  const freed = freedBy({ ...visit, startsAt: '2027-07-06T08:00:00Z', endsAt: '2027-07-06T08:45:00Z' });
  expect(freed).toEqual({ ...asked, left: 'c' });
});

it('leaves out the case that left the time only while it is that very time', () => {
  const left = { ...asked, left: 'c' };
  expect(askFor(left, left).left).toBe('c');
  expect(askFor({ ...left, on: '2027-07-07' }, left).left).toBeUndefined();
});

it('means no clinician any more who does not work at the clinic chosen now', () => {
  const clinics = practice.clinics.flatMap((north) => [north, { ...north, id: 'east', clinicians: [] }]);
  const two = { today: '2027-07-01', clinics, laboratories: [], orderedFrom: [], paths: [] };
  expect(chooseClinic(two, asked, 'east')).toEqual({ ...asked, clinic: 'east', clinician: undefined });
  expect(chooseClinic(two, asked, id)).toEqual(asked);
});
