import { basename } from 'node:path';
import { importPatients, type ImportedPatients } from '@archwright/casework';
import { localDate } from '@archwright/calendar';
import {
  patientColumns,
  readPatients,
  reasonInWords,
  rejectsCsv,
  type DateOrder,
  type PatientFile,
  type RejectedRow,
  type TableEncoding,
} from '@archwright/interop';
import { Clinic } from '@archwright/records';
import { callersPath, readArguments, readChoice, UsageError } from '../arguments.js';
import { readMapping } from './column-mapping.js';
import { readInput, writeWhole } from './files.js';
import { inPractice, type OpenPractice } from './open-practice.js';

export const PATIENTS_USAGE =
  'npm run --silent cli -- import patients FILE [--map "Header=column,..."] [--update] [--strict] [--dry-run] ' +
  '[--rejects FILE] [--date-order dmy|mdy] [--encoding windows-1252] [--zone ZONE] [--organisation NAME] [--data FOLDER]';
const ORDERS: readonly DateOrder[] = ['ymd', 'dmy', 'mdy'];
const ENCODINGS: readonly TableEncoding[] = ['utf-8', 'windows-1252'];
const MOST_BYTES = 50_000_000;
/** Reasons that are told at once; the file of rejects holds all of them. */
const TOLD = 50;

interface PatientImportOptions {
  readonly isUpdating: boolean;
  readonly isStrict: boolean;
  readonly isDryRun: boolean;
}

/** Reads patients from a CSV file: each row is taken or rejected with its reasons. */
export async function importPatientsCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, PATIENTS_USAGE, {
    map: { type: 'string', multiple: true, default: [] },
    update: { type: 'boolean', default: false },
    strict: { type: 'boolean', default: false },
    'dry-run': { type: 'boolean', default: false },
    rejects: { type: 'string' },
    'date-order': { type: 'string', default: 'ymd' },
    encoding: { type: 'string', default: 'utf-8' },
    zone: { type: 'string' },
    organisation: { type: 'string' },
    data: { type: 'string', default: '.data' },
    help: { type: 'boolean', default: false },
  });
  if (values.help) {
    process.stdout.write(help());
    return 0;
  }
  const [path, surplus] = positionals;
  if (path === undefined || surplus !== undefined) throw new UsageError('Give one file of patients.', PATIENTS_USAGE);
  if (values.rejects !== undefined && callersPath(values.rejects) === callersPath(path)) {
    throw new UsageError('--rejects names the file that is imported; give another one.', PATIENTS_USAGE);
  }
  const mapping = readMapping(values.map, PATIENTS_USAGE);
  const dateOrder = readChoice('--date-order', values['date-order'], ORDERS, PATIENTS_USAGE);
  const encoding = readChoice('--encoding', values.encoding, ENCODINGS, PATIENTS_USAGE);
  const bytes = readInput(path, MOST_BYTES, PATIENTS_USAGE);
  const options = { isUpdating: values.update, isStrict: values.strict, isDryRun: values['dry-run'] };

  return inPractice(values, async (practice) => {
    const zone = values.zone ?? (await commonZone(practice));
    const today = localDate(practice.now.getTime(), zone);
    const { locale } = practice.organisation;
    const file = readPatients(bytes, { mapping, zone, locale, dateOrder, encoding, today });
    process.stderr.write(`Comparing ${String(file.rows.length)} patients with those who are there ...\n`);
    const imported = await takeIn(practice, file, options);
    const rejected = [...file.rejected, ...imported.rejected].sort((one, other) => one.line - other.line);
    if (values.rejects !== undefined) writeWhole(values.rejects, rejectsCsv(file.header, rejected));
    process.stdout.write(answerOf(basename(path), file, imported, rejected, options));
    return rejected.length === 0 ? 0 : 1;
  });
}

/** All that can be taken, in one transaction; nothing at all when it is only tried, or strict and a row is rejected. */
function takeIn(practice: OpenPractice, file: PatientFile, options: PatientImportOptions): Promise<ImportedPatients> {
  return practice.attempt(
    (tx) => importPatients(tx, practice.actor, file.rows, options, practice.now),
    ({ rejected }) => !options.isDryRun && !isRefused(options, [...file.rejected, ...rejected]),
  );
}

function isRefused({ isStrict }: PatientImportOptions, rejected: readonly RejectedRow[]): boolean {
  return isStrict && rejected.length > 0;
}

/** @throws {UsageError} when the clinics lie in several zones: which one counts is the practice's to say */
async function commonZone(practice: OpenPractice): Promise<string> {
  const clinics = await practice.read((tx) => tx.find(Clinic, { select: { zone: true } }));
  const [zone, other] = new Set(clinics.map((clinic) => clinic.zone));
  if (zone !== undefined && other === undefined) return zone;
  throw new UsageError('The clinics share no time zone; give that of the patients with --zone.', PATIENTS_USAGE);
}

function answerOf(
  name: string,
  { rows, rejected: unread, ignoredColumns }: PatientFile,
  imported: ImportedPatients,
  rejected: readonly RejectedRow[],
  options: PatientImportOptions,
): string {
  const outcome = options.isDryRun
    ? 'tried only, nothing was written'
    : isRefused(options, rejected)
      ? 'refused as a whole because rows were rejected, nothing was written'
      : 'done';
  return [
    `${name}, ${String(rows.length + unread.length)} rows: ${outcome}`,
    `added ${String(imported.added)}, updated ${String(imported.updated)}, already there ${String(imported.unchanged)}, rejected ${String(rejected.length)}`,
    ...(ignoredColumns.length > 0 ? [`columns that nothing was made of: ${ignoredColumns.join(', ')}`] : []),
    ...rejected
      .slice(0, TOLD)
      .map(({ line, reasons }) => `line ${String(line)}: ${reasons.map(reasonInWords).join('; ')}`),
    ...(rejected.length > TOLD ? [`and ${String(rejected.length - TOLD)} more; --rejects FILE keeps all of them`] : []),
    '',
  ].join('\n');
}

function help(): string {
  const columns = patientColumns.map(
    ({ title, accepted, isRequired }) => `  ${title.padEnd(22)} ${accepted}${isRequired ? ' (needed)' : ''}`,
  );
  return [
    `Usage: ${PATIENTS_USAGE}`,
    'The first line names the columns, in any order, parted by comma, semicolon or tab:',
    ...columns,
    'A reference decides who is who; without one, name and birth date do. An empty cell says nothing.',
    '--map       names columns that are called otherwise in the file; --map "Surname at birth=family_name"',
    '--update    changes patients who are already there; without it a row that differs from them is rejected',
    '--strict    writes nothing when any row is rejected',
    '--dry-run   writes nothing and tells what would happen',
    '--rejects   keeps rejected rows with their reasons, to be corrected and imported again',
    '',
  ].join('\n');
}
