import { createHash } from 'node:crypto';
import { requireZone } from '@archwright/calendar';
import { createPatient, type CreatePatient } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { PatientFileError } from '../errors.js';
import { COLUMNS, readHeader, type ColumnField, type DateOrder, type Header } from './columns.js';
import { decodeTable, parseTable, type TableRow } from './table.js';

/** Project default: far above one practice's patients. */
const MAX_BYTES = 50_000_000;

export interface PatientRow {
  readonly line: number;
  /**
   * Stable key of the person in this source: the file's own id, else a digest of names and birth date. Importing the
   * same key again must update or change nothing, never add.
   */
  readonly key: string;
  readonly patient: CreatePatient;
}

/** One reason why a row was left out. `raw` is the cell as written, for the person who corrects the file. */
export interface PatientReject {
  readonly line: number;
  readonly column: string;
  readonly problem: string;
  readonly accepted: string;
  readonly raw: string;
}

export interface PatientFileOptions {
  /** Header name of the file to field of the patient, such as `{ Surname: 'familyName' }`. */
  readonly mapping?: Readonly<Record<string, string>> | undefined;
  /** Time zone of rows that name none. */
  readonly zone: string;
  /** Language of rows that name none. */
  readonly locale?: string | undefined;
  /** Order of day, month and year in dates that are not ISO 8601; `ymd` unless stated. */
  readonly dateOrder?: DateOrder | undefined;
}

/**
 * Reads a table of patients row by row against the contract of a new patient. A row with any problem is left out whole
 * and reported cell by cell; the caller decides whether the others are imported.
 *
 * @param bytes CSV with comma, semicolon or tab; UTF-8, UTF-16 or Windows-1252
 * @throws {PatientFileError} when the file as a whole cannot be understood, and nothing of it may be imported
 */
export function readPatients(
  bytes: Uint8Array,
  { mapping = {}, zone, locale = 'en', dateOrder = 'ymd' }: PatientFileOptions,
): { rows: PatientRow[]; rejects: PatientReject[]; ignoredColumns: readonly string[] } {
  if (bytes.byteLength > MAX_BYTES) {
    throw new PatientFileError(
      'too-large',
      `The file has ${String(bytes.byteLength)} bytes. Accepted: at most ${String(MAX_BYTES)}; split it.`,
    );
  }
  const [head, ...body] = parseTable(decodeTable(bytes));
  if (head === undefined) throw new PatientFileError('empty', 'The file is empty. Accepted: a header line and rows.');
  const header = readHeader(head.cells, mapping);
  const rows: PatientRow[] = [];
  const rejects: PatientReject[] = [];
  const firstLines = new Map<string, number>();
  for (const row of body) {
    const answer = readRow(row, head, header, { zone, locale, dateOrder });
    if (Array.isArray(answer)) {
      rejects.push(...answer);
      continue;
    }
    const firstLine = firstLines.get(answer.key);
    if (firstLine === undefined) {
      firstLines.set(answer.key, row.line);
      rows.push(answer);
    } else {
      const problem = `is the same person as line ${String(firstLine)}`;
      rejects.push({ line: row.line, column: '', problem, accepted: 'each person once', raw: '' });
    }
  }
  return { rows, rejects, ignoredColumns: header.ignored };
}

interface Defaults {
  readonly zone: string;
  readonly locale: string;
  readonly dateOrder: DateOrder;
}

function readRow(row: TableRow, head: TableRow, header: Header, defaults: Defaults): PatientRow | PatientReject[] {
  const wholeRow = (problem: string, accepted: string): PatientReject[] => [
    { line: row.line, column: '', problem, accepted, raw: row.cells.join(' | ') },
  ];
  if (row.badQuotes)
    return wholeRow('holds a stray quotation mark', 'quotation marks around a whole cell, doubled inside');
  if (row.cells.length !== head.cells.length) {
    const cells = String(head.cells.length);
    return wholeRow(`has ${String(row.cells.length)} cells where the header has ${cells}`, `${cells} cells`);
  }
  const cellOf = (field: ColumnField) => row.cells[header.positions.get(field) ?? -1]?.trim() ?? '';
  const rejects: PatientReject[] = [];
  const reject = (field: ColumnField, problem: string): void => {
    if (rejects.some(({ column }) => column === columnName(field))) return;
    rejects.push({
      line: row.line,
      column: columnName(field),
      problem,
      accepted: COLUMNS[field].accepted,
      raw: cellOf(field),
    });
  };
  const columnName = (field: ColumnField) => head.cells[header.positions.get(field) ?? -1]?.trim() ?? field;

  const values: Record<string, unknown> = { zone: defaults.zone, locale: defaults.locale };
  for (const field of header.positions.keys()) {
    const cell = cellOf(field);
    if (cell === '' || field === 'externalId') continue;
    const value = COLUMNS[field].read(cell, defaults.dateOrder);
    if (value === null) reject(field, 'cannot be read');
    else values[field] = value;
  }
  const parsed = createPatient.safeParse(values);
  for (const issue of parsed.error?.issues ?? []) {
    const field = (Object.keys(COLUMNS) as ColumnField[]).find((known) => known === issue.path[0]);
    if (field === undefined)
      throw new Error(`The patient's contract has a field that no column fills: ${issue.path.join('.')}`);
    reject(field, cellOf(field) === '' ? 'is empty' : 'is not accepted');
  }
  if (cellOf('externalId').length > 100) reject('externalId', 'is too long');
  if (!isZone(String(values['zone']))) reject('zone', 'is no known time zone');
  if (rejects.length > 0 || parsed.data === undefined) return rejects;
  return { line: row.line, key: keyOf(cellOf('externalId'), parsed.data), patient: parsed.data };
}

function keyOf(externalId: string, { givenName, familyName, birthOn }: CreatePatient): string {
  if (externalId !== '') return `id:${externalId}`;
  const plain = [familyName, givenName].map((name) => name.normalize('NFKC').toLowerCase().replace(/\s+/g, ' '));
  return `person:${createHash('sha256')
    .update(JSON.stringify([...plain, birthOn]))
    .digest('hex')}`;
}

function isZone(name: string): boolean {
  try {
    requireZone(name);
    return true;
  } catch (error) {
    if (error instanceof DomainError) return false;
    throw error;
  }
}
