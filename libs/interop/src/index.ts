export { CalendarFieldError, CalendarFileError, PatientFileError } from './errors.js';
export { readBusyTimes, type BusyTime } from './calendar-in/busy-times.js';
export type { CalendarProblem } from './calendar-in/content-lines.js';
export {
  itineraryCalendar,
  visitCalendar,
  type CalendarParty,
  type CalendarVisit,
} from './calendar-out/visit-calendar.js';
export {
  readPatients,
  type PatientFileOptions,
  type PatientReject,
  type PatientRow,
} from './patients/read-patients.js';
export { rejectsCsv } from './patients/rejects-csv.js';
export { readColumns, TableFileError, type NumberTable } from './tables/read-columns.js';
export { readTracing, type TracingRow } from './tracing/read-tracing.js';
