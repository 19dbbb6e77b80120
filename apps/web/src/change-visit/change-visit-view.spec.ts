import { dayAfter, startChoices, typedInstant, typedMinute } from './change-visit-view.js';

// Source: RFC 5545, section 3.3.5, FORM #3, its two America/New_York examples of 2007.
it.each([
  ['2007-03-11', '02:30', 'America/New_York', '2007-03-11T07:30:00Z'],
  ['2007-11-04', '01:30', 'America/New_York', '2007-11-04T05:30:00Z'],
  ['2027-01-28', '09:20', 'Europe/London', '2027-01-28T09:20:00Z'],
  ['2027-07-28', '09:20', 'Europe/London', '2027-07-28T08:20:00Z'],
  ['2027-07-28', '9:20', 'Europe/London', null],
  ['2027-07-28', '09:22', 'Europe/London', null],
  ['', '09:20', 'Europe/London', null],
])('reads %s %s in %s as %s', (date, time, zone, instant) => {
  expect(typedInstant(date, time, zone)).toBe(instant);
});

it('takes any minute for what has happened', () => {
  expect(typedMinute('2027-07-28', '09:22', 'Europe/London')).toBe('2027-07-28T08:22:00Z');
  expect(typedMinute('2027-07-28', '9:22', 'Europe/London')).toBeNull();
});

it.each([
  ['2027-01-07T09:00:00Z', '2027-01-04', '2027-01-08'],
  ['2027-01-31T23:30:00Z', '2027-01-04', '2027-02-01'],
  ['2027-01-04T09:00:00Z', '2027-01-09', '2027-01-09'],
])('expects who cannot come at %s, seen on %s, again on %s', (startsAt, today, day) => {
  expect(dayAfter(startsAt, 'Europe/London', today)).toBe(day);
});

it('names each other start with its clinician', () => {
  const choices = startChoices(
    {
      appointmentId: 'a',
      zone: 'Europe/London',
      starts: [{ startsAt: '2027-01-14T10:00:00Z', clinicianId: 'w', clinicianName: 'Wren' }],
    },
    '2027-01-05',
  );
  expect(choices).toEqual([{ value: '2027-01-14T10:00:00Z w', label: 'Thu 14 Jan, 10:00, Wren' }]);
});
