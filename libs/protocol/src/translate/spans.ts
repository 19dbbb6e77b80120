import {
  acceptedOn,
  addDays,
  addLabWorkingDays,
  dateOfDay,
  labWorkingDayAfter,
  localDate,
  startOfDayMs,
  toInstantMs,
  type LabDays,
} from '@archwright/calendar';
import type { ArcTables } from '@archwright/planner';
import type { TimeSpan } from '../path-schema.js';
import { SLOT_MINUTES, type PlanningAxis } from './axis.js';

const MINUTE_MS = 60_000;

/** Where days are counted: the clinic's zone for calendar days, the laboratory's calendar for its working days. */
export interface DayCounting {
  readonly zone: string;
  readonly labDays: LabDays | null;
}

export interface Limits {
  readonly min: TimeSpan | null;
  readonly max: TimeSpan | null;
}

/** A limit in lab working days is asked for where no laboratory is known: a broken path, refused by its checks earlier. */
function requireLabDays(labDays: LabDays | null): LabDays {
  if (labDays === null) throw new Error('a wait in lab working days needs a laboratory');
  return labDays;
}

function labDate(fromMs: number, days: number, counting: DayCounting): string {
  const labDays = requireLabDays(counting.labDays);
  return addLabWorkingDays(acceptedOn(fromMs, labDays), days, labDays);
}

/** First instant at which what follows may start, counted from the end of what it follows. */
function earliestMs(span: TimeSpan, endMs: number, counting: DayCounting): number {
  switch (span.unit) {
    case 'minutes':
      return endMs + span.amount * MINUTE_MS;
    case 'calendar-days':
      return startOfDayMs(addDays(localDate(endMs - 1, counting.zone), span.amount), counting.zone);
    case 'lab-working-days':
      return startOfDayMs(labDate(endMs, span.amount, counting), counting.labDays?.zone ?? counting.zone);
  }
}

/** Last instant at which what follows may start. */
function latestMs(span: TimeSpan, endMs: number, counting: DayCounting): number {
  switch (span.unit) {
    case 'minutes':
      return endMs + span.amount * MINUTE_MS;
    case 'calendar-days':
      return startOfDayMs(addDays(localDate(endMs - 1, counting.zone), span.amount + 1), counting.zone) - 1;
    case 'lab-working-days':
      return (
        startOfDayMs(addDays(labDate(endMs, span.amount, counting), 1), counting.labDays?.zone ?? counting.zone) - 1
      );
  }
}

/** Bounds on a start when what it follows has ended at a known time. */
export function boundsAfter(
  limits: Limits,
  endMs: number,
  counting: DayCounting,
): { readonly fromMs: number; readonly untilMs: number | null } {
  return {
    fromMs: limits.min === null ? endMs : earliestMs(limits.min, endMs, counting),
    untilMs: limits.max === null ? null : latestMs(limits.max, endMs, counting),
  };
}

/** The bounds as tables over the slot at which what is followed ends. */
export function tablesOf(axis: PlanningAxis, limits: Limits, counting: DayCounting): ArcTables {
  return {
    lo: limits.min === null ? null : sharedTable(axis, limits.min, counting, 'lo'),
    hi: limits.max === null ? null : sharedTable(axis, limits.max, counting, 'hi'),
  };
}

/** Earliest start of what follows by the slot at which what it follows ends. */
export function earliestTable(axis: PlanningAxis, min: TimeSpan, counting: DayCounting): Int32Array {
  return sharedTable(axis, min, counting, 'lo');
}

/** Many waits of a path have the same length. */
function sharedTable(axis: PlanningAxis, span: TimeSpan, counting: DayCounting, bound: 'lo' | 'hi'): Int32Array {
  const { amount, unit } = span;
  return axis.once(`span ${bound} ${String(amount)} ${unit} ${JSON.stringify(counting)}`, () =>
    table(axis, span, counting, bound),
  );
}

function table(axis: PlanningAxis, span: TimeSpan, counting: DayCounting, bound: 'lo' | 'hi'): Int32Array {
  const { count } = axis;
  const most = bound === 'lo' ? count : count - 1;
  const slots = new Int32Array(count + 1);
  if (span.unit === 'minutes') {
    const shift = bound === 'lo' ? Math.ceil(span.amount / SLOT_MINUTES) : Math.floor(span.amount / SLOT_MINUTES);
    for (let end = 0; end <= count; end++) slots[end] = end + shift < most ? end + shift : most;
    return slots;
  }
  const slotOf =
    span.unit === 'calendar-days' ? calendarSlots(axis, span, counting, bound) : labSlots(axis, span, counting, bound);
  for (let end = 0; end <= count; end++) {
    const slot = slotOf(end);
    slots[end] = slot < most ? slot : most;
  }
  return slots;
}

/** Bound slot by end slot, the same for all ends of one date. */
function calendarSlots(
  axis: PlanningAxis,
  span: TimeSpan,
  { zone }: DayCounting,
  bound: 'lo' | 'hi',
): (end: number) => number {
  const days = axis.daysIn(zone);
  let lastDay = NaN;
  let slot = 0;
  return (end) => {
    // An end at midnight belongs to the day it closes.
    const day = days[end === 0 ? 0 : end - 1] ?? 0;
    if (day !== lastDay) {
      lastDay = day;
      slot =
        bound === 'lo'
          ? axis.firstSlotOfDay(day + span.amount, zone)
          : axis.firstSlotOfDay(day + span.amount + 1, zone) - 1;
    }
    return slot;
  };
}

/** Bound slot by end slot: the same for all ends of one day up to the cut-off, and for all after it. */
function labSlots(
  axis: PlanningAxis,
  { amount }: TimeSpan,
  { labDays }: DayCounting,
  bound: 'lo' | 'hi',
): (end: number) => number {
  const laboratory = requireLabDays(labDays);
  const { zone, cutOffLocal } = laboratory;
  const days = axis.daysIn(zone);
  const lastDayOfAxis = days.at(-1) ?? 0;
  let lastDay = NaN;
  let cutOff = 0;
  let lastAccepted = NaN;
  let slot = 0;
  return (end) => {
    const day = days[end] ?? lastDayOfAxis;
    if (day !== lastDay) {
      lastDay = day;
      cutOff = axis.slotUntil(toInstantMs(`${dateOfDay(day)}T${cutOffLocal}`, zone));
    }
    const accepted = end <= cutOff ? day : day + 1;
    if (accepted !== lastAccepted) {
      lastAccepted = accepted;
      const ready = labWorkingDayAfter(accepted, amount, laboratory);
      slot = bound === 'lo' ? axis.firstSlotOfDay(ready, zone) : axis.firstSlotOfDay(ready + 1, zone) - 1;
    }
    return slot;
  };
}
