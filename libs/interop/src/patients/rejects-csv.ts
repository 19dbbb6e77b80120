import Papa from 'papaparse';
import type { PatientReject } from './read-patients.js';

/** A cell that begins so may be run as a formula by a spreadsheet (OWASP ASVS 5.0.0, requirement 1.2.10). */
const FORMULA_START = /^[=+\-@\t\r\u0000]/; // eslint-disable-line no-control-regex -- NUL is one of the starts it names

/** The rows that were left out, as CSV for the person who corrects the file. */
export function rejectsCsv(rejects: readonly PatientReject[]): string {
  const fields = ['line', 'column', 'problem', 'accepted', 'raw'] as const;
  const data = rejects.map((reject) => fields.map((field) => reject[field]));
  return `${Papa.unparse({ fields: [...fields], data }, { escapeFormulae: FORMULA_START })}\r\n`;
}
