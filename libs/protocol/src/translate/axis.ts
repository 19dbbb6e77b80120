import {
  busyToBits,
  dayOfSlot,
  openIntervals,
  toBits,
  type ClosedDays,
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
  private readonly madeOf = new WeakMap<object, Map<string, unknown>>();

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

  /**
   * What `make` gave for this key; one key always stands for one type. What many parts of a problem have in common is
   * made once, and the planner knows it again by its identity. Nobody changes it in place.
   */
  once<Made>(key: string, make: () => Made): Made {
    return this.onceOf(this, key, make);
  }

  /** {@link once} for what is made of one object that never changes. */
  onceOf<Made>(of: object, key: string, make: () => Made): Made {
    let known = this.madeOf.get(of);
    if (known === undefined) {
      known = new Map();
      this.madeOf.set(of, known);
    }
    let made = known.get(key) as Made | undefined;
    if (made === undefined) {
      made = make();
      known.set(key, made);
    }
    return made;
  }

  /** Slots wholly within the open time of rules, less closures; resources with the same hours share them. */
  open(rules: readonly LocalRule[], closures: readonly (ClosedDays | Interval)[]): SlotBits {
    return this.once(`open ${JSON.stringify([rules, closures])}`, () =>
      this.bits(openIntervals({ rules, closures }, this.window)),
    );
  }

  bits(free: readonly Interval[]): SlotBits {
    return toBits(free, this);
  }

  /** Slots that no busy time touches. */
  notBusy(busy: readonly Interval[]): SlotBits {
    return this.onceOf(busy, 'not busy', () => {
      const taken = busyToBits(busy, this);
      return this.full().map((word, index) => word & ~(taken[index] ?? 0));
    });
  }

  /** Each slot as its own bound: what starts no earlier than something ends. */
  slots(): Int32Array {
    return this.once('slots', () => Int32Array.from({ length: this.count + 1 }, (_, slot) => slot));
  }

  full(): SlotBits {
    return this.range(0, this.count - 1);
  }

  /** The slots from `first` to `last`, both included, cut at the ends of the axis. */
  range(first: number, last: number): SlotBits {
    const [from, until] = [Math.max(0, first), Math.min(last, this.count - 1)];
    return this.once(`range ${String(from)} ${String(until)}`, () =>
      toBits([{ startMs: this.msOf(from), endMs: this.msOf(until + 1) }], this),
    );
  }
}
