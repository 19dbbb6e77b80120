import { typedNumber } from '../stage/typed-number.js';

/** What stands in a box for a number. */
export interface TypedBox {
  readonly text: string;
  /** Null while the text is no number. */
  readonly read: number | null;
  /** The number that counted when it was typed. */
  readonly before: number | null;
}

export const readBox = (text: string, before: number | null): TypedBox => ({ text, read: typedNumber(text), before });

/** What the box shows: the text while the number is still the one it was typed for, else the number as it is now. */
export function textInBox(typed: TypedBox | null, value: number | null): string {
  const isOwn = typed !== null && (value === typed.read || (typed.read === null && value === typed.before));
  return isOwn ? typed.text : value === null ? '' : String(value);
}
