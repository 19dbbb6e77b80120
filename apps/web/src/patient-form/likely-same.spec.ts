import type { PatientPage } from '@archwright/contracts';
import { askForLikeness, likelySame } from './likely-same.js';
import { draftOfPatient, emptyPatient, readPatient } from './patient-form-view.js';

function known(id: string, givenName: string, familyName: string, birthOn: string): PatientPage['items'][number] {
  const reading = readPatient({ ...emptyPatient('Europe/London'), givenName, familyName, birthOn });
  if (!('body' in reading)) throw new Error('the patient should be complete');
  return { ...reading.body, id, version: 1 };
}
const patients = [
  known('a', 'Ada', 'Müller-Example', '1949-03-04'),
  known('b', 'Adam', 'Other', '1949-03-04'),
  known('c', 'Berta', 'Müller', '1950-01-01'),
];
const typed = (givenName: string, familyName: string, birthOn = '') => ({
  ...draftOfPatient({ ...known('x', 'x', 'x', '1950-01-01') }),
  givenName,
  familyName,
  birthOn,
});
const found = (...draft: Parameters<typeof typed>) => likelySame(typed(...draft), patients).map(({ id }) => id);

it.each([
  ['both names half typed', found('Ad', 'mull'), ['a']],
  ['accents, hyphens and case left out', found('ada', 'muller example'), ['a']],
  ['names swapped', found('Muller', 'Ada'), ['a']],
  ['the birth date and one name', found('Ad', '', '1949-03-04'), ['a', 'b']],
  ['another birth date', found('Ada', 'Müller-Example', '1960-03-04'), []],
  ['one name alone', found('', 'Müller'), []],
])('finds whom it may be by %s', (_, ids, expected) => {
  expect(ids).toEqual(expected);
});

it('marks the same name with the same birth date, and puts it first', () => {
  const again = [known('d', 'Adele', 'Zed', '1949-03-04'), ...patients];
  const likely = likelySame(typed('Ada', 'Müller-Example', '1949-03-04'), again);
  expect(likely[0]).toMatchObject({ id: 'a', isSame: true });
  expect(likely.slice(1).some(({ isSame }) => isSame)).toBe(false);
});

it('asks by the birth date once it is whole, by a name of two letters before', () => {
  expect(askForLikeness(typed('A', 'E'))).toBeNull();
  expect(askForLikeness(typed('Ada', 'E'))).toEqual({ q: 'Ada' });
  expect(askForLikeness(typed('Ada', 'Ex'))).toEqual({ q: 'Ex' });
  expect(askForLikeness(typed('Ada', 'Ex', '1949-03-04'))).toEqual({ birthOn: '1949-03-04' });
});
