import { isStorable } from './storable-text.js';

it.each([
  ['plain text', 'Müller 漢 😀\n', true],
  ['nothing', '', true],
  ['NUL', 'a\u0000', false],
  ['half of a character', 'a\ud83d', false],
  ['the other half', '\ude00a', false],
])('tells of %s whether a database keeps it', (_, text, isKept) => {
  expect(isStorable(text)).toBe(isKept);
});
