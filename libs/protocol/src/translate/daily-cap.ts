import { dayNumber, localDate } from '@archwright/calendar';
import type { ChainLag, SlotBits } from '@archwright/planner';
import type { PlanningAxis } from './axis.js';
import type { VisitToPlan } from './remaining.js';
import type { PlanRequest } from './request.js';
import { tablesOf } from './spans.js';

/**
 * The most minutes that a patient can sit in a chair on one day, over all of the patient's visits of that day: those to be
 * planned, those of other cases, and those of this case that have begun. A single visit that is longer than that by itself
 * takes place on a day of its own, and the plan says so.
 */
export class DailyCap {
  private constructor(
    private readonly axis: PlanningAxis,
    private readonly minutes: number,
    /** Minutes that are taken already, by local day number. */
    private readonly taken: ReadonlyMap<number, number>,
    private readonly zone: string,
  ) {}

  /** Null for a patient who can sit for as long as it takes. */
  static of(axis: PlanningAxis, { patient, fixedStages, nowMs }: PlanRequest, zone: string): DailyCap | null {
    if (patient.chairMinutesPerDay === null) return null;
    const taken = new Map<number, number>();
    for (const { startMs, endMs } of [...patient.otherVisits, ...fixedStages.filter((each) => each.startMs < nowMs)]) {
      const day = dayNumber(localDate(startMs, zone));
      taken.set(day, (taken.get(day) ?? 0) + (endMs - startMs) / 60_000);
    }
    return new DailyCap(axis, patient.chairMinutesPerDay, taken, zone);
  }

  /** Slots of the days that have room for a visit of so many minutes; null when every day has. */
  roomFor(minutes: number): SlotBits | null {
    const full = [...this.taken.keys()].filter((day) => this.isFull(day, minutes));
    if (full.length === 0) return null;
    return this.axis.notBusy(
      full.map((day) => ({
        startMs: this.axis.msOf(this.axis.firstSlotOfDay(day, this.zone)),
        endMs: this.axis.msOf(this.axis.firstSlotOfDay(day + 1, this.zone)),
      })),
    );
  }

  /** Visits that together have no room on a day cannot all lie on it. */
  lags(visits: readonly VisitToPlan[]): ChainLag[] {
    return visits.flatMap((_, from) => this.lagsFrom(from, visits));
  }

  private lagsFrom(from: number, visits: readonly VisitToPlan[]): ChainLag[] {
    const lags: ChainLag[] = [];
    const known = new Set<number>();
    let minutes = minutesOf(visits[from]);
    for (let to = from + 1; to < visits.length; to++) {
      minutes += minutesOf(visits[to]);
      const lag = { key: `chair-minutes-per-day-${String(from)}`, from, to, anchor: 'end' as const, byClinic: null };
      // What is booked on one day already is not undone by a limit.
      const isKept = visits.slice(from, to + 1).every(({ kept }) => kept !== null);
      if (isKept) continue;
      if (minutes > this.minutes) return [...lags, { ...lag, ...this.nextDay() }];
      const full = [...this.taken.keys()].filter((day) => this.isFull(day, minutes) && !known.has(day));
      for (const day of full) known.add(day);
      if (full.length > 0) lags.push({ ...lag, lo: this.notOn(new Set(full)), hi: null });
    }
    return lags;
  }

  private isFull(day: number, minutes: number): boolean {
    return (this.taken.get(day) ?? 0) + minutes > this.minutes;
  }

  private nextDay(): Pick<ChainLag, 'lo' | 'hi'> {
    const aDay = { amount: 1, unit: 'calendar-days', firmness: 'hard', standing: 'practice' } as const;
    const min = { ...aDay, source: 'the patient’s daily limit' };
    return tablesOf(this.axis, { min, max: null }, { zone: this.zone, labDays: null });
  }

  /** Earliest start after each end: on the next day after an end on one of these, else at once. */
  private notOn(full: ReadonlySet<number>): Int32Array {
    const days = this.axis.daysIn(this.zone);
    // An end at midnight belongs to the day it closes.
    return Int32Array.from({ length: this.axis.count + 1 }, (_, end) => {
      const day = days[Math.max(0, end - 1)] ?? 0;
      return full.has(day) ? this.axis.firstSlotOfDay(day + 1, this.zone) : end;
    });
  }
}

const minutesOf = (visit: VisitToPlan | undefined): number => visit?.stage.chairMinutes.typical ?? 0;
