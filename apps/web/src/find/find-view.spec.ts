import { isDayOfPractice, typedDate } from './find-view.js';

it.each([
  ['2027-01-05', '2027-01-05'],
  ['5 Jan', '2027-01-05'],
  ['Tue 5 January', '2027-01-05'],
  ['5 january 2028', '2028-01-05'],
  ['1 Nov', '2026-11-01'],
  ['31 Feb', null],
  ['2027-02-30', null],
  ['4.3.1949', '1949-03-04'],
  ['04/03/1949', '1949-03-04'],
  ['31/02/1949', null],
  ['26-0147', null],
  ['Example', null],
  ['5 Foo', null],
])('reads %s as %s', (text, date) => {
  expect(typedDate(text, '2026-12-20')).toBe(date);
});

it('tells a day of the practice from a birth date', () => {
  expect(isDayOfPractice('2027-01-05', '2026-12-20')).toBe(true);
  expect(isDayOfPractice('1949-03-04', '2026-12-20')).toBe(false);
});
