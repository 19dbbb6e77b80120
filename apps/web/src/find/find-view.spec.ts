import { typedDate } from './find-view.js';

it.each([
  ['2027-01-05', '2027-01-05'],
  ['5 Jan', '2027-01-05'],
  ['Tue 5 January', '2027-01-05'],
  ['5 january 2028', '2028-01-05'],
  ['1 Nov', '2026-11-01'],
  ['31 Feb', null],
  ['2027-02-30', null],
  ['26-0147', null],
  ['Example', null],
  ['5 Foo', null],
])('reads %s as %s', (text, date) => {
  expect(typedDate(text, '2026-12-20')).toBe(date);
});
