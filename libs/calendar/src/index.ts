export { courierRuns, earliestArrivalMs, nextPickUp, type CourierRun } from './courier.js';
export { subtractDuration } from './duration.js';
export { CalendarNumberError, CalendarTextError, NoLabWorkingDayError, RecurrenceRuleError } from './errors.js';
export {
  covers,
  intersect,
  normalise,
  overlapping,
  subtract,
  totalMinutes,
  union,
  type Interval,
} from './intervals.js';
export { acceptedOn, addLabWorkingDays, isLabWorkingDay, labWorkingDayAfter, type LabDays } from './lab-days.js';
export { addDays, dateOfDay, dayNumber, weekday } from './local-date.js';
export { machineRuns } from './machine-runs.js';
export { closedInterval, openIntervals, type ClosedDays, type Hours } from './open-intervals.js';
export { parseRecurrence, type RecurrenceRule } from './recurrence-rule.js';
export { expandRule, startsOf, type LocalRule } from './rule.js';
export { busyToBits, dayOfSlot, toBits, type SlotAxis } from './slots.js';
export { localDate, requireZone, startOfDayMs, toInstantMs, toLocal } from './zone.js';
export { addWorkingMinutes } from './working-minutes.js';
