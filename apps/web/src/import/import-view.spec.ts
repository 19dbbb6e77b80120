import { calendarOutcome, isFit, patientOutcome } from './import-view.js';

const answer = {
  rows: 3,
  added: 1,
  updated: 0,
  unchanged: 1,
  isWritten: false,
  rejectedCount: 5,
  rejected: [{ line: 3, reason: 'birth date lies ahead; accepted: a past date' }],
  rejectsCsv: 'x',
  ignoredColumns: ['shoe size'],
};

it('says of a trial that nothing was written, what would be, and what was left out', () => {
  const { tone, sentences, tables } = patientOutcome(answer, true);
  expect(tone).toBe('plain');
  expect(sentences).toEqual([
    'Tried only, nothing was written.',
    '3 rows: 1 new, 0 changed, 1 already there, 5 rejected.',
    'Columns that nothing was made of: shoe size.',
    '4 more are in the file of rejected rows.',
  ]);
  expect(tables[0]?.rows[0]).toMatchObject({ head: '3' });
});

it('tells a strict import that was refused from one that was written', () => {
  expect(patientOutcome(answer, false)).toMatchObject({ tone: 'caution' });
  expect(patientOutcome({ ...answer, isWritten: true }, false)).toMatchObject({ tone: 'go' });
});

it('names the booked times that a calendar falls on by the clock of the place', () => {
  const booked = [{ startsAt: '2027-01-05T09:00:00Z', endsAt: '2027-01-05T09:30:00Z', appointmentId: null }];
  const counts = { resourceId: 'r', busy: 4, unchanged: 1, gone: 0, conflicts: 1, disturbances: 0 };
  const { sentences, tables } = calendarOutcome(
    { ...counts, booked, problems: [] },
    true,
    'Europe/Berlin',
    '2027-01-04',
  );
  expect(sentences[1]).toBe('4 busy times, 1 of them known already; 0 are gone. 1 falls on booked or held time.');
  expect(tables).toHaveLength(1);
  expect(tables[0]?.rows[0]).toMatchObject({ head: 'Tue 5 Jan, 10:00', cells: ['Tue 5 Jan, 10:30'] });
});

it('says where new busy times have repairs looked for', () => {
  const answer = { resourceId: 'r', busy: 4, unchanged: 1, gone: 0, conflicts: 3, booked: [], problems: [] };
  const outcomeOf = (disturbances: number, isTrial: boolean) =>
    calendarOutcome({ ...answer, disturbances }, isTrial, 'Europe/Berlin', '2027-01-04');
  expect(outcomeOf(0, false)).toMatchObject({ hasRepairs: false, sentences: { length: 2 } });
  expect(outcomeOf(2, true).hasRepairs).toBe(false);
  expect(outcomeOf(2, false)).toMatchObject({
    hasRepairs: true,
    sentences: [
      'Written.',
      expect.any(String),
      '2 of the new ones fall on visits to come: repairs are being looked for.',
    ],
  });
});

it('takes files that have something in them and fit into a request', () => {
  expect([null, { size: 0 }, { size: 9_000_000 }, { size: 100 }].map(isFit)).toEqual([false, false, false, true]);
});
