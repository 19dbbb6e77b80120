import { UsageError } from '../arguments.js';

/**
 * Reads `Surname at birth=family_name,Born=birth_date`. A comma inside a header name is written `\,`.
 *
 * @returns header name of the file to column
 * @throws {UsageError} naming the part that maps nothing
 */
export function readMapping(texts: readonly string[], usage: string): Record<string, string> {
  const parts = texts.flatMap((text) => text.split(/(?<!\\),/)).map((part) => part.replaceAll('\\,', ','));
  const pairs = parts.map((part): [string, string] => {
    const at = part.lastIndexOf('=');
    const [header, column] = [part.slice(0, Math.max(at, 0)).trim(), part.slice(at + 1).trim()];
    if (header === '' || column === '') {
      throw new UsageError(`--map "${part}" maps nothing; give "Header of the file=column".`, usage);
    }
    return [header, column];
  });
  return Object.fromEntries(pairs);
}
