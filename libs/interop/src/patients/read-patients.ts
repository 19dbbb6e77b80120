import { PatientFileError } from '../errors.js';
import { readHeader, type DateOrder } from './columns.js';
import { readRow, type PatientRow, type RejectedRow } from './read-row.js';
import { decodeTable, parseTable, type TableEncoding } from './table.js';

/** Project default: far above one practice's patients. */
const MAX_BYTES = 50_000_000;

export interface PatientFileOptions {
  /** Header name of the file to column, such as `{ 'Surname at birth': 'family_name' }`. */
  readonly mapping?: Readonly<Record<string, string>> | undefined;
  /** Time zone of rows that name none. */
  readonly zone: string;
  /** Language of rows that name none. */
  readonly locale?: string | undefined;
  /** Order of day, month and year in dates that are not ISO 8601; `ymd` unless stated. */
  readonly dateOrder?: DateOrder | undefined;
  /** `utf-8` unless stated; UTF-16 is known by its byte order mark. */
  readonly encoding?: TableEncoding | undefined;
  /** Date after which nobody is born, such as 2027-01-28. */
  readonly today: string;
}

export interface PatientFile {
  /** Names of the columns as written. */
  readonly header: readonly string[];
  readonly rows: readonly PatientRow[];
  readonly rejected: readonly RejectedRow[];
  readonly ignoredColumns: readonly string[];
}

/**
 * Reads a table of patients row by row against the contract of a new patient. A row with any problem is left out whole
 * and reported cell by cell; the caller decides whether the others are imported.
 *
 * @param bytes CSV with comma, semicolon or tab
 * @throws {PatientFileError} when the file as a whole cannot be understood, and nothing of it may be imported
 */
export function readPatients(
  bytes: Uint8Array,
  { mapping = {}, zone, locale = 'en', dateOrder = 'ymd', encoding = 'utf-8', today }: PatientFileOptions,
): PatientFile {
  if (bytes.byteLength > MAX_BYTES) {
    throw new PatientFileError(
      'too-large',
      `The file has ${String(bytes.byteLength)} bytes. Accepted: at most ${String(MAX_BYTES)}; split it.`,
    );
  }
  const [head, ...body] = parseTable(decodeTable(bytes, encoding));
  if (head === undefined) throw new PatientFileError('empty', 'The file is empty. Accepted: a header line and rows.');
  const header = readHeader(head.cells, mapping);
  const rows: PatientRow[] = [];
  const rejected: RejectedRow[] = [];
  const firstLines = new Map<string, number>();
  for (const record of body) {
    const row = readRow(record, header, { zone, locale, dateOrder, today });
    if ('reasons' in row) {
      rejected.push(row);
      continue;
    }
    const firstLine = firstLines.get(row.key);
    if (firstLine === undefined) {
      firstLines.set(row.key, row.line);
      rows.push(row);
    } else {
      rejected.push(sameAsLine(row, firstLine));
    }
  }
  return { header: header.names, rows, rejected, ignoredColumns: header.ignored };
}

/** A row whose person stands in the file before. */
export function sameAsLine({ line, cells }: Pick<RejectedRow, 'line' | 'cells'>, firstLine: number): RejectedRow {
  const problem = `is the same person as line ${String(firstLine)}`;
  return { line, cells, reasons: [{ column: '', problem, accepted: 'each person once' }] };
}
