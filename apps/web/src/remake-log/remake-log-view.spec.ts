import type { RemakeCount, RemakeEntry } from '@archwright/contracts';
import { countRows, entryRow, isPeriod, listTitle, periodOf, pictureWords } from './remake-log-view.js';

const count = (more: Partial<RemakeCount>): RemakeCount => ({
  key: 'looks-refused',
  title: 'Looks refused at trial placement',
  remakes: 4,
  byCheck: 1,
  cases: 3,
  ...more,
});
const entry = (more: Partial<RemakeEntry>): RemakeEntry => ({
  alertId: 'a',
  caseId: 'c',
  caseNumber: '27-0003',
  cause: 'looks-refused',
  causeTitle: 'Looks refused at trial placement',
  reason: 'The patient refuses the looks.',
  foundBy: 'check',
  foundAt: 'Trial placement',
  origin: 'Set-up',
  originKind: 'lab-step',
  originCode: 'set-up',
  arches: ['upper'],
  discards: ['Trial set-up', 'Wax rims'],
  acceptedAt: '2027-03-02T09:30:00Z',
  ...more,
});

it('looks a quarter back unless told, and refuses what is no period', () => {
  expect(periodOf({}, '2027-03-31')).toEqual({ from: '2026-12-31', until: '2027-03-31' });
  expect(periodOf({ from: '2027-01-01' }, '2027-03-31')).toEqual({ from: '2027-01-01', until: '2027-03-31' });
  expect(periodOf({ from: '2027-04-01' }, '2027-03-31')).toBeNull();
  expect(isPeriod({ from: '2026-04-01', until: '2027-04-01' })).toBe(true);
  expect(isPeriod({ from: '2026-03-31', until: '2027-04-01' })).toBe(false);
  expect(isPeriod({ from: '', until: '2027-04-01' })).toBe(false);
});

it('draws each bar as long as its part of the longest, and says the same in words', () => {
  const rows = countRows([count({}), count({ key: 'x', title: 'Impression flawed', remakes: 1 })]);
  expect(rows.map(({ share, link }) => [share, link])).toEqual([
    [1, 'Looks refused at trial placement: show 4 remakes'],
    [0.25, 'Impression flawed: show 1 remake'],
  ]);
  expect(pictureWords('By cause', rows)).toBe(
    'By cause: Looks refused at trial placement 4, Impression flawed 1. The table below says the same.',
  );
});

it('tells of one remake where it was found and by what, from where it was made again, and what was lost', () => {
  expect(entryRow(entry({}), 'Europe/London', '2027-03-31')).toMatchObject({
    reason: 'The patient refuses the looks.',
    facts: [
      'found at “Trial placement” by a check',
      'back to “Set-up, upper”',
      'discarded: Trial set-up, Wax rims',
      'accepted Tue 2 Mar, 09:30',
    ],
  });
  expect(entryRow(entry({ discards: [], reason: null }), 'Europe/London', '2027-03-31').facts).toHaveLength(3);
});

it('names the list by what was chosen', () => {
  const counts = { causes: [count({})], origins: [count({ key: 'Set-up', title: 'Set-up' })] };
  expect(listTitle(counts, {})).toBe('One by one');
  expect(listTitle(counts, { cause: 'looks-refused' })).toBe('One by one: Looks refused at trial placement');
  expect(listTitle(counts, { cause: 'looks-refused', origin: 'Set-up' })).toBe(
    'One by one: Looks refused at trial placement; Set-up',
  );
});
