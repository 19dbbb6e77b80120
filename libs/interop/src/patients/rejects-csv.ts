import Papa from 'papaparse';
import type { PatientFile } from './read-patients.js';
import type { RejectedRow, RowReason } from './read-row.js';

/** A cell that begins so may be run as a formula by a spreadsheet (OWASP ASVS 5.0.0, requirement 1.2.10). */
const FORMULA_START = /^[=+\-@\t\r\u0000]/; // eslint-disable-line no-control-regex -- NUL is one of the starts it names
const OWN_COLUMNS = ['rejected line', 'rejected because'];

/**
 * The rows that were left out as they stood in the file, each with its line and all reasons, as CSV. Corrected, it can be
 * imported like the file itself; its own columns are then ignored.
 */
export function rejectsCsv(header: PatientFile['header'], rejected: readonly RejectedRow[]): string {
  // A file of rejects that was imported again brings these columns along.
  const kept = header.flatMap((name, position) => (OWN_COLUMNS.includes(name) ? [] : [position]));
  const fields = [...kept.map((position) => header[position] ?? ''), ...OWN_COLUMNS];
  const data = rejected.map(({ line, cells, reasons }) => [
    ...kept.map((position) => cells[position] ?? ''),
    String(line),
    reasons.map(reasonInWords).join('; '),
    // Cells that the header has no column for: what is cut off could not be corrected.
    ...cells.slice(header.length),
  ]);
  return `${Papa.unparse([fields, ...data], { escapeFormulae: FORMULA_START })}\r\n`;
}

/** Column, problem and what would be accepted; never the cell, which may be a patient's. */
export function reasonInWords({ column, problem, accepted }: RowReason): string {
  return `${column === '' ? 'the row' : column} ${problem}; accepted: ${accepted}`;
}
