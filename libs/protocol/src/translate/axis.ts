import {
  busyToBits,
  dayOfSlot,
  openIntervals,
  toBits,
  type ClosedDays,
  type Hours,
  type Interval,
  type LocalRule,
  type SlotAxis,
} from '@archwright/calendar';
import type { SlotBits } from '@archwright/planner';

export const SLOT_MINUTES = 5;
const SLOT_MS = SLOT_MINUTES * 60_000;
const WEEK_SLOTS = (7 * 24 * 60) / SLOT_MINUTES;

/** The planner's time: 5-minute slots from the first one at or after now. */
export class PlanningAxis implements SlotAxis {
  readonly slotMinutes = SLOT_MINUTES;
  readonly originMs: number;
  readonly count: number;
  private readonly days = new Map<string, Int32Array>();
  private readonly dayStarts = new Map<string, { readonly firstDay: number; readonly slots: Int32Array }>();
  private readonly expanded = new Map<string, Interval[]>();

  constructor(nowMs: number, weeks: number) {
    this.originMs = Math.ceil(nowMs / SLOT_MS) * SLOT_MS;
    this.count = weeks * WEEK_SLOTS;
  }

  get window(): Interval {
    return { startMs: this.originMs, endMs: this.msOf(this.count) };
  }

  msOf(slot: number): number {
    return this.originMs + slot * SLOT_MS;
  }

  /** First slot that starts at or after an instant, not cut at the ends of the axis. */
  slotFrom(ms: number): number {
    return Math.ceil((ms - this.originMs) / SLOT_MS);
  }

  /** Last slot that starts at or before an instant, not cut at the ends of the axis. */
  slotUntil(ms: number): number {
    return Math.floor((ms - this.originMs) / SLOT_MS);
  }

  /** Local day number of each slot. */
  daysIn(zone: string): Int32Array {
    let days = this.days.get(zone);
    if (days === undefined) {
      days = dayOfSlot(this, zone);
      this.days.set(zone, days);
    }
    return days;
  }

  /** First slot of a local day: 0 for days before the axis, `count` for days after it. */
  firstSlotOfDay(day: number, zone: string): number {
    let starts = this.dayStarts.get(zone);
    if (starts === undefined) {
      const days = this.daysIn(zone);
      const firstDay = days[0] ?? 0;
      const slots = new Int32Array((days[days.length - 1] ?? firstDay) - firstDay + 1);
      days.forEach((each, slot) => {
        if (slot > 0 && days[slot - 1] !== each) slots[each - firstDay] = slot;
      });
      starts = { firstDay, slots };
      this.dayStarts.set(zone, starts);
    }
    if (day < starts.firstDay) return 0;
    return starts.slots[day - starts.firstDay] ?? this.count;
  }

  /** Open time of rules, less closures; several resources with the same hours share the expansion. */
  open(rules: readonly LocalRule[], closures: readonly (ClosedDays | Interval)[]): Interval[] {
    const key = JSON.stringify([rules, closures]);
    let open = this.expanded.get(key);
    if (open === undefined) {
      const hours: Hours = { rules, closures };
      open = openIntervals(hours, this.window);
      this.expanded.set(key, open);
    }
    return open;
  }

  bits(free: readonly Interval[]): SlotBits {
    return toBits(free, this);
  }

  /** Slots that no busy time touches. */
  notBusy(busy: readonly Interval[]): SlotBits {
    const taken = busyToBits(busy, this);
    return this.full().map((word, index) => word & ~(taken[index] ?? 0));
  }

  full(): SlotBits {
    return this.range(0, this.count - 1);
  }

  /** The slots from `first` to `last`, both included, cut at the ends of the axis. */
  range(first: number, last: number): SlotBits {
    return toBits([{ startMs: this.msOf(first), endMs: this.msOf(last + 1) }], this);
  }
}

/** Slots in both; writes into neither. */
export function both(a: SlotBits, b: SlotBits): SlotBits {
  return a.map((word, index) => word & (b[index] ?? 0));
}

/** Starts from which `length` slots in a row are all set. */
export function startsWithin(bits: SlotBits, count: number, length: number): SlotBits {
  const starts = new Uint32Array(bits.length);
  let run = 0;
  for (let slot = count - 1; slot >= 0; slot--) {
    const word = slot >>> 5;
    const bit = 1 << (slot & 31);
    run = ((bits[word] ?? 0) & bit) !== 0 ? run + 1 : 0;
    if (run >= length) starts[word] = (starts[word] ?? 0) | bit;
  }
  return starts;
}
