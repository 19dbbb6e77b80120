import type { ClashRow } from '../look/clash-sheet.js';

/** A part of a draft in words. */
export interface DraftPart {
  readonly key: string;
  readonly label: string;
  readonly text: string;
}

/** What two versions say differently, part by part; a part that only one of them has is nothing in the other. */
export function differences(mine: readonly DraftPart[], theirs: readonly DraftPart[]): ClashRow[] {
  const parts = new Map([...theirs, ...mine].map(({ key, label }) => [key, label]));
  const textIn = (version: readonly DraftPart[], key: string): string =>
    version.find((part) => part.key === key)?.text ?? '';
  return [...parts]
    .map(([key, label]) => ({ key, label, mine: textIn(mine, key), theirs: textIn(theirs, key) }))
    .filter((row) => row.mine !== row.theirs);
}
