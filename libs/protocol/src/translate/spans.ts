import { acceptedOn, addDays, addLabWorkingDays, localDate, startOfDayMs, type LabDays } from '@archwright/calendar';
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
function labDate(fromMs: number, days: number, { labDays }: DayCounting): string {
  if (labDays === null) throw new Error('a wait in lab working days needs a laboratory');
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
    lo: limits.min === null ? null : table(axis, limits.min, counting, 'lo'),
    hi: limits.max === null ? null : table(axis, limits.max, counting, 'hi'),
  };
}

function table(axis: PlanningAxis, span: TimeSpan, counting: DayCounting, bound: 'lo' | 'hi'): Int32Array {
  const { count } = axis;
  const cut = (slot: number): number => (bound === 'lo' ? Math.min(slot, count) : Math.min(slot, count - 1));
  const slots = new Int32Array(count + 1);
  if (span.unit === 'minutes') {
    const shift = bound === 'lo' ? Math.ceil(span.amount / SLOT_MINUTES) : Math.floor(span.amount / SLOT_MINUTES);
    for (let end = 0; end <= count; end++) slots[end] = cut(end + shift);
    return slots;
  }
  if (span.unit === 'lab-working-days') {
    const edge = bound === 'lo' ? earliestMs : latestMs;
    const slotAt = bound === 'lo' ? axis.slotFrom.bind(axis) : axis.slotUntil.bind(axis);
    for (let end = 0; end <= count; end++) {
      slots[end] = cut(Math.max(0, slotAt(edge(span, axis.msOf(end), counting))));
    }
    return slots;
  }
  const days = axis.daysIn(counting.zone);
  for (let end = 0; end <= count; end++) {
    // An end at midnight belongs to the day it closes.
    const day = days[Math.max(0, end - 1)] ?? 0;
    const first = axis.firstSlotOfDay(day + span.amount + (bound === 'lo' ? 0 : 1), counting.zone);
    slots[end] = cut(bound === 'lo' ? first : first - 1);
  }
  return slots;
}
