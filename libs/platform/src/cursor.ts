import { DomainError } from '@archwright/kernel';
import { z } from 'zod';
import { isStorable } from './storable-text.js';

/** The cursor of a page was not one that this service gave out. */
export class CursorInvalidError extends DomainError {
  constructor() {
    super(
      'platform.cursor-invalid',
      'The cursor is not one that this service gave out. Send "next" of the page before, unchanged, or no cursor for the first page.',
    );
  }
}

const position = z.tuple([z.string(), z.uuid()]);

/** Place in a list ordered by (`sortKey`, `id`): the last row of the page before. */
export interface Cursor {
  readonly sortKey: string;
  readonly id: string;
}

export function encodeCursor({ sortKey, id }: Cursor): string {
  return Buffer.from(JSON.stringify([sortKey, id])).toString('base64url');
}

/**
 * @param isSortKey what the keys of this list are, where the database reads them as more than text
 * @throws {CursorInvalidError} when `text` was not made by {@link encodeCursor} for such a list
 */
export function decodeCursor(text: string, isSortKey: (key: string) => boolean = isStorable): Cursor {
  const found = position.safeParse(parsed(Buffer.from(text, 'base64url').toString('utf8')));
  if (!found.success || !isSortKey(found.data[0])) throw new CursorInvalidError();
  const [sortKey, id] = found.data;
  return { sortKey, id };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/**
 * One page out of `limit + 1` rows read: the extra row only tells that there is more.
 *
 * @param cursorOf place of a row in the list's order
 */
export function pageOf<Row>(
  rows: readonly Row[],
  limit: number,
  cursorOf: (row: Row) => Cursor,
): { items: Row[]; next: string | null } {
  const items = rows.slice(0, limit);
  const last = items.at(-1);
  return { items, next: rows.length > limit && last !== undefined ? encodeCursor(cursorOf(last)) : null };
}
