import { createHash } from 'node:crypto';
import { requireZone } from '@archwright/calendar';
import { createPatient, type CreatePatient } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { COLUMNS, type ColumnField, type DateOrder, type Header } from './columns.js';
import type { TableRow } from './table.js';

/** Project default, above the oldest age on record (122 years, from memory): an earlier year is a typing error. */
const OLDEST_YEARS = 125;
/** What the file of rejected rows puts before a cell that a spreadsheet might run. */
const ESCAPED_FORMULA = /^'(?=[=+\-@])/;

export interface PatientRow {
  readonly line: number;
  readonly cells: readonly string[];
  /**
   * Stable key of the person in this source: the file's own reference, else a digest of names and birth date. Importing
   * the same key again must update or change nothing, never add.
   */
  readonly key: string;
  readonly hasReference: boolean;
  /** What the file says of the person, the rest from the defaults of a new patient. */
  readonly patient: CreatePatient;
  /** Fields that the row itself fills; an empty cell says nothing. */
  readonly given: readonly (keyof CreatePatient)[];
}

/** Why a row was left out; `column` is empty when the row as a whole is meant. */
export interface RowReason {
  readonly column: string;
  readonly problem: string;
  readonly accepted: string;
}

/** A row that was left out whole, as it stood in the file. */
export interface RejectedRow {
  readonly line: number;
  readonly cells: readonly string[];
  readonly reasons: readonly RowReason[];
}

/** How cells are read, and what stands in for those that the file leaves out. */
export interface RowDefaults {
  readonly zone: string;
  readonly locale: string;
  readonly dateOrder: DateOrder;
  /** Date after which nobody is born. */
  readonly today: string;
}

/** One record as a patient, or all that is wrong with it. */
export function readRow(row: TableRow, header: Header, defaults: RowDefaults): PatientRow | RejectedRow {
  const wholeRow = (problem: string, accepted: string) => ({
    ...origin(row),
    reasons: [{ column: '', problem, accepted }],
  });
  if (row.badQuotes)
    return wholeRow('holds a stray quotation mark', 'quotation marks around a whole cell, doubled inside');
  if (row.cells.length !== header.names.length) {
    const cells = String(header.names.length);
    return wholeRow(`has ${String(row.cells.length)} cells where the header has ${cells}`, `${cells} cells`);
  }
  const cellOf = (field: ColumnField) =>
    (row.cells[header.positions.get(field) ?? -1] ?? '').trim().replace(ESCAPED_FORMULA, '');
  const reasons = new Map<ColumnField, RowReason>();
  const reject = (field: ColumnField, problem: string): void => {
    const column = header.names[header.positions.get(field) ?? -1] ?? COLUMNS[field].title;
    if (!reasons.has(field)) reasons.set(field, { column, problem, accepted: COLUMNS[field].accepted });
  };

  const given: Record<string, unknown> = {};
  for (const field of header.positions.keys()) {
    const cell = cellOf(field);
    if (cell === '' || field === 'reference') continue;
    const value = COLUMNS[field].read(cell, defaults.dateOrder);
    if (value === null) reject(field, 'cannot be read');
    else given[field] = value;
  }
  const parsed = createPatient.safeParse({ zone: defaults.zone, locale: defaults.locale, ...given });
  for (const issue of parsed.error?.issues ?? []) {
    const field = (Object.keys(COLUMNS) as ColumnField[]).find((known) => known === issue.path[0]);
    if (field === undefined)
      throw new Error(`The patient's contract has a field that no column fills: ${issue.path.join('.')}`);
    reject(field, cellOf(field) === '' ? 'is empty' : 'is not accepted');
  }
  if (cellOf('reference').length > 100) reject('reference', 'is too long');
  if (typeof given.birthOn === 'string' && !isBirthDate(given.birthOn, defaults.today)) {
    reject('birthOn', `is after ${defaults.today} or more than ${String(OLDEST_YEARS)} years before`);
  }
  if (typeof given.zone === 'string' && !isZone(given.zone)) reject('zone', 'is no known time zone');
  if (reasons.size > 0 || parsed.data === undefined) return { ...origin(row), reasons: [...reasons.values()] };
  const reference = cellOf('reference');
  return {
    ...origin(row),
    key: reference === '' ? personKey(parsed.data) : `id:${reference}`,
    hasReference: reference !== '',
    patient: parsed.data,
    given: Object.keys(given) as (keyof CreatePatient)[], // the contract refuses every other field
  };
}

function origin({ line, cells }: TableRow): Pick<RejectedRow, 'line' | 'cells'> {
  return { line, cells };
}

function isBirthDate(date: string, today: string): boolean {
  const oldest = `${String(Number(today.slice(0, 4)) - OLDEST_YEARS)}${today.slice(4)}`;
  return date <= today && date >= oldest;
}

function personKey({ givenName, familyName, birthOn }: CreatePatient): string {
  const plain = [familyName, givenName].map((name) => name.normalize('NFKC').toLowerCase().replace(/\s+/g, ' '));
  const digest = createHash('sha256').update(JSON.stringify([...plain, birthOn]));
  return `person:${digest.digest('hex')}`;
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
