import { DomainError } from '@archwright/kernel';
import { decodeTable, parseTable } from '../patients/table.js';

/** A table of numbers cannot be read; the message says where and what is accepted. */
export class TableFileError extends DomainError {
  constructor(
    reason: 'empty' | 'header' | 'column' | 'cell',
    message: string,
    details: Readonly<Record<string, unknown>> = {},
  ) {
    super(`interop.table-${reason}`, message, details);
  }
}

export interface NumberTable {
  readonly names: readonly string[];
  /**
   * Numbers of a column, row by row.
   *
   * @throws {TableFileError} naming the first cell that is no number, by line
   */
  column(name: string): readonly number[];
  /**
   * Text of a column, row by row.
   *
   * @throws {TableFileError} naming the first cell that is empty, by line
   */
  texts(name: string): readonly string[];
  /** Line of the file on which a row stands; rows count from 0. */
  lineOf(row: number): number;
}

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i;

/**
 * What parts the header parts the table. A header of one name parts nothing: commas below it are decimal commas, as
 * they are where semicolons or tabs part the cells.
 */
function delimiterOf(text: string): ',' | ';' | '\t' {
  const [header = ''] = text.replace(/"[^"]*"/g, '').split(/[\r\n]/, 1);
  return header.includes('\t') ? '\t' : header.includes(',') && !header.includes(';') ? ',' : ';';
}

/** A decimal comma is taken where the table is not parted by commas, as parsed cells then hold it. */
function toNumber(cell: string): number | null {
  const text = cell.trim();
  return NUMBER.test(text) ? Number(text.replace(',', '.')) : null;
}

/**
 * A table with a header line, parted by comma, semicolon or tab. A header that is itself a number is taken for a
 * missing header.
 *
 * @throws {TableFileError} for an empty file, a missing header, the same name twice, or a row with more cells than names
 */
export function readColumns(bytes: Uint8Array): NumberTable {
  const text = decodeTable(bytes, 'utf-8');
  const [header, ...rows] = parseTable(text, delimiterOf(text));
  if (header === undefined || rows.length === 0) {
    throw new TableFileError('empty', 'The file holds no rows. Accepted: a header line and one row per value.');
  }
  const names = header.cells.map((cell) => cell.trim());
  if (names.some((name) => toNumber(name) !== null)) {
    throw new TableFileError(
      'header',
      `Line ${String(header.line)} holds numbers. Accepted: a header line with a name for each column first.`,
    );
  }
  const repeated = names.find((name, at) => names.indexOf(name) !== at);
  if (repeated !== undefined)
    throw new TableFileError('header', `Two columns are named "${repeated}". Give each its own name.`);
  const tooLong = rows.find((row) => row.cells.slice(names.length).some((cell) => cell.trim() !== ''));
  if (tooLong !== undefined) {
    throw new TableFileError(
      'cell',
      `Line ${String(tooLong.line)} holds ${String(tooLong.cells.length)} cells, the header names ${String(names.length)}. ` +
        'With decimal commas, part the columns by semicolons.',
      { line: tooLong.line },
    );
  }
  const cells = (name: string): readonly string[] => {
    const at = names.indexOf(name);
    if (at < 0) {
      throw new TableFileError('column', `There is no column "${name}". Columns: ${names.join(', ')}.`, {
        name,
        names,
      });
    }
    return rows.map((row) => row.cells[at]?.trim() ?? '');
  };
  const lineOf = (index: number): number => rows[index]?.line ?? 0;
  const refusal = (name: string, index: number, said: string, accepted: string): TableFileError => {
    const line = lineOf(index);
    return new TableFileError('cell', `Line ${String(line)}: column "${name}" ${said}. Accepted: ${accepted}.`, {
      name,
      line,
    });
  };
  return {
    names,
    lineOf,
    texts: (name) =>
      cells(name).map((text, index) => {
        if (text !== '') return text;
        throw refusal(name, index, 'is empty', 'a text in every row');
      }),
    column: (name) =>
      cells(name).map((text, index) => {
        const value = toNumber(text);
        if (value !== null) return value;
        const said = text === '' ? 'is empty' : `holds "${text.slice(0, 40)}"`;
        throw refusal(name, index, said, 'a number such as 61.5');
      }),
  };
}
