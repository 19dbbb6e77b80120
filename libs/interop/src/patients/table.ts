import { isUtf8 } from 'node:buffer';
import Papa from 'papaparse';
import { PatientFileError } from '../errors.js';

/** One record of the file with the line on which it begins, counted from 1 as editors do. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
  /** A quotation mark inside the record that follows no rule; the cells may be wrong then. */
  readonly badQuotes: boolean;
}

export type TableEncoding = 'utf-8' | 'windows-1252';

/**
 * Text of a file: UTF-8 or UTF-16 with a byte order mark, else in the stated encoding. Another one is never guessed: the
 * wrong guess spells names wrongly without anybody noticing.
 *
 * @throws {PatientFileError} when it is not in the stated encoding, or holds NUL characters and so is no text at all
 */
export function decodeTable(bytes: Uint8Array, encoding: TableEncoding): string {
  const text = decode(bytes, encoding);
  if (text.includes('\u0000')) {
    throw new PatientFileError('encoding', 'The file is not text. Accepted: CSV in UTF-8, UTF-16 or Windows-1252.');
  }
  return text;
}

function decode(bytes: Uint8Array, encoding: TableEncoding): string {
  // `TextDecoder` drops the byte order mark itself.
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  if (encoding === 'windows-1252') return new TextDecoder('windows-1252').decode(bytes);
  if (isUtf8(bytes)) return new TextDecoder('utf-8').decode(bytes);
  throw new PatientFileError(
    'encoding',
    'The file is not UTF-8. Accepted: save it as "CSV UTF-8", or say that it is Windows-1252, as older spreadsheets write it.',
  );
}

/**
 * Records of a table whose cells are parted by comma, semicolon or tab, found from the text; empty lines are left out.
 *
 * @param delimiter where the caller knows it: guessing is unsure in a small table with decimal commas
 * @throws {PatientFileError} when a quotation mark is never closed: the rest of the file would vanish into one cell
 */
export function parseTable(text: string, delimiter?: ',' | ';' | '\t'): TableRow[] {
  const rows: TableRow[] = [];
  let begin = 0;
  let line = 1;
  Papa.parse<string[]>(text, {
    ...(delimiter === undefined ? {} : { delimiter }),
    delimitersToGuess: [',', ';', '\t'],
    step({ data, errors, meta }) {
      if (errors.some(({ code }) => code === 'MissingQuotes')) {
        throw new PatientFileError(
          'quotes',
          `A quotation mark in the record of line ${String(line)} is never closed. Close it; nothing was loaded.`,
          { line },
        );
      }
      if (data.some((cell) => cell.trim() !== '')) {
        rows.push({ line, cells: data, badQuotes: errors.some(({ code }) => code === 'InvalidQuotes') });
      }
      line += text.slice(begin, meta.cursor).split(/\r\n|\n|\r/).length - 1;
      begin = meta.cursor;
    },
  });
  return rows;
}
