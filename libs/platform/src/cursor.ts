import { DomainError } from '@archwright/kernel';
import { z } from 'zod';

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

/** @throws {CursorInvalidError} when `text` was not made by {@link encodeCursor} */
export function decodeCursor(text: string): Cursor {
  try {
    const [sortKey, id] = position.parse(JSON.parse(Buffer.from(text, 'base64url').toString('utf8')));
    return { sortKey, id };
  } catch {
    throw new CursorInvalidError();
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
