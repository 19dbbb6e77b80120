import { count } from './plural.js';

/** Words of the screen that takes in files. */
export const importWords = {
  title: 'Take in files',
  link: 'Import',
  sentence: 'A file is tried first: what would happen is shown, and nothing is written until you say so.',
  patients: 'Patients from a table',
  patientsHint:
    'CSV with comma, semicolon or tab; the first line names the columns: given name, family name, birth date, and more. ' +
    'A reference decides who is who; without one, name and birth date do.',
  calendar: 'Busy times from a calendar',
  calendarHint: 'An iCalendar file (.ics) of one chair, person or set of instruments. Booked visits keep their place.',
  file: 'File',
  needFile: 'Choose a file of at most 5 MB.',
  needResource: 'Choose whose calendar it is.',
  needSource: 'Enter a name of up to 500 characters; a later file under the same name replaces this one.',
  zone: 'Time zone of rows that name none',
  dateOrder: 'Dates such as 3/4/1951 are',
  dateOrders: { ymd: 'year, month, day', dmy: 'day, month, year', mdy: 'month, day, year' },
  encoding: 'Saved as',
  encodings: { 'utf-8': 'UTF-8 or UTF-16', 'windows-1252': 'Windows-1252 (older spreadsheets)' },
  isUpdating: 'Change patients who are there already, in what the file speaks of',
  isStrict: 'Write nothing when any row is rejected',
  resource: 'Whose calendar',
  choose: 'Choose',
  source: 'Name of this calendar',
  try: 'Try it',
  take: 'Take it in',
  tried: 'Tried only, nothing was written.',
  refused: 'Rows were rejected, so nothing was written.',
  done: 'Written.',
  patientCounts: (rows: number, added: number, updated: number, unchanged: number, rejected: number) =>
    `${count(rows, 'row', 'rows')}: ${String(added)} new, ${String(updated)} changed, ${String(unchanged)} already there, ` +
    `${String(rejected)} rejected.`,
  ignored: (columns: string) => `Columns that nothing was made of: ${columns}.`,
  rejectedTitle: 'Rejected rows',
  rejectedColumns: { line: 'Line', reason: 'Why, and what would be accepted' },
  more: (n: number) => `${String(n)} more are in the file of rejected rows.`,
  download: 'Save the rejected rows with their reasons',
  rejectsName: 'rejected-rows.csv',
  calendarCounts: (busy: number, unchanged: number, gone: number, conflicts: number) =>
    `${count(busy, 'busy time', 'busy times')}, ${String(unchanged)} of them known already; ${String(gone)} are gone. ` +
    `${count(conflicts, 'falls', 'fall')} on booked or held time.`,
  bookedTitle: 'Booked and held times that it falls on',
  bookedColumns: { from: 'From', until: 'Until' },
  problemsTitle: 'Left out because it could not be read',
  problemColumns: { line: 'Line', component: 'Entry', problem: 'Why' },
};
