export { CalendarFieldError, CalendarFileError, PatientFileError } from './errors.js';
export { readBusyTimes, type BusyTime } from './calendar-in/busy-times.js';
export type { CalendarProblem } from './calendar-in/content-lines.js';
export {
  itineraryCalendar,
  visitCalendar,
  type CalendarParty,
  type CalendarVisit,
} from './calendar-out/visit-calendar.js';
export { patientColumns, titleOf, type ColumnField, type DateOrder } from './patients/columns.js';
export { readPatients, sameAsLine, type PatientFile, type PatientFileOptions } from './patients/read-patients.js';
export { type PatientRow, type RejectedRow, type RowReason } from './patients/read-row.js';
export { reasonInWords, rejectsCsv } from './patients/rejects-csv.js';
export type { TableEncoding } from './patients/table.js';
export { readColumns, TableFileError, type NumberTable } from './tables/read-columns.js';
export { readTracing, type TracingRow } from './tracing/read-tracing.js';
