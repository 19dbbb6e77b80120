import { readBox, textInBox } from './number-text.js';

it.each([
  ['', null],
  ['1.', null],
  ['-', null],
  ['05', 5],
  ['1,50', 1.5],
])('leaves %j in the box as it was typed', (text, read) => {
  const typed = readBox(text, 45);
  expect(typed.read).toBe(read);
  // A box without a number leaves the number from before in force, or none.
  expect(textInBox(typed, read ?? 45)).toBe(text);
  if (read === null) expect(textInBox(typed, null)).toBe(text);
});

it('shows a number that was changed elsewhere, and nothing where there is none', () => {
  expect(textInBox(readBox('05', 45), 60)).toBe('60');
  expect(textInBox(readBox('', 45), 60)).toBe('60');
  expect(textInBox(null, 45)).toBe('45');
  expect(textInBox(null, null)).toBe('');
});
