import { z } from 'zod';

let read = (text: string): string => text;

/** Has the delivered texts of every answer said in the reader's words from now on; a page says once in which. */
export function readDeliveredAs(words: (text: string) => string): void {
  read = words;
}

/**
 * A text that came with the product, such as the title of a visit or the name of a measurement, or what a practice has
 * written in its place. It travels in English; whoever reads an answer may have it in their own language.
 */
export const deliveredText = z.string().overwrite((text) => read(text));
