import { UsageError } from '../arguments.js';
import { CALENDAR_USAGE, importCalendarCommand } from './import-calendar.js';
import { importPatientsCommand, PATIENTS_USAGE } from './import-patients.js';

const USAGE = `${CALENDAR_USAGE}\n       ${PATIENTS_USAGE}`;

/**
 * Real input: a calendar of a chair or person, or a table of patients. Answers 0 when all of it was taken, 1 when
 * something was refused.
 */
export async function importCommand([what, ...args]: readonly string[]): Promise<number> {
  if (what === 'calendar') return importCalendarCommand(args);
  if (what === 'patients') return importPatientsCommand(args);
  if (what === '--help') {
    process.stdout.write(`Usage: ${USAGE}\n`);
    return 0;
  }
  throw new UsageError(what === undefined ? 'Say what to import.' : `"${what}" can't be imported.`, USAGE);
}
