const COMBINING_MARKS = /\p{M}/gu;
/** Sorts after every character that can follow a prefix, in byte order too. */
const LAST_CHARACTER = '\u{10FFFF}';

/** Family and given name as they are compared: lower case, without accents, one space between words. */
export function searchKeyOf({ familyName, givenName }: { familyName: string; givenName: string }): string {
  return folded(`${familyName} ${givenName}`);
}

/** The same from each of its words on, so that a search may begin with any of them; the family name comes first. */
export function nameKeysOf(name: { familyName: string; givenName: string }): string[] {
  const key = searchKeyOf(name);
  const starts = [0, ...[...key.matchAll(/[ -]/g)].map(({ index }) => index + 1)];
  return [...new Set(starts.map((start) => `${key.slice(start)} ${key.slice(0, start)}`.trim()))];
}

/** Keys that begin with what was typed lie from `from` up to, but not including, `until`. */
export function searchRange(typed: string): { from: string; until: string } {
  const from = folded(typed);
  return { from, until: `${from}${LAST_CHARACTER}` };
}

function folded(text: string): string {
  const plain = text.normalize('NFKD').replace(COMBINING_MARKS, '').toLowerCase();
  // A sigma is written otherwise at the end of a word, which a beginning of the word does not know.
  return plain
    .replaceAll('ς', 'σ')
    .replace(/[\s,]+/g, ' ')
    .trim();
}
