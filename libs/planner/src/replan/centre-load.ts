import { hasBit } from '../chain/bits.js';
import { FULL_PERCENT, overloadOf } from '../workload/objective.js';
import type { WorkloadCentre } from '../workload/model.js';
import type { HeldTime, SlotRange } from './held-time.js';

/** A work centre whose places are free of everything but the time that cases hold. */
export type LevelCentre = Pick<WorkloadCentre, 'key' | 'open' | 'places'>;

/** Open slots that some held time takes, by cell. */
interface Share {
  readonly cells: Int32Array;
  readonly slots: Int32Array;
}

/** How full each work centre is on each day: a cell is one centre on one day. */
export class CentreLoad {
  private readonly firstDay: number;
  private readonly dayCount: number;
  private readonly centreOfPlace = new Map<string, number>();
  private readonly open: Int32Array;
  /** What no case that takes part holds. */
  private readonly staying: Int32Array;
  private readonly shares = new WeakMap<HeldTime, Share>();
  private readonly slotsOfDay: readonly SlotRange[];

  /** @param strangers time of cases that take no part */
  constructor(
    private readonly centres: readonly LevelCentre[],
    private readonly dayOfSlot: Int32Array,
    strangers: HeldTime,
  ) {
    this.firstDay = dayOfSlot[0] ?? 0;
    this.dayCount = (dayOfSlot.at(-1) ?? this.firstDay) - this.firstDay + 1;
    this.slotsOfDay = this.daysAsRanges();
    this.open = new Int32Array(centres.length * this.dayCount);
    this.staying = new Int32Array(this.open.length);
    centres.forEach(({ open, places }, centre) => {
      for (const { key } of places) this.centreOfPlace.set(key, centre);
      for (let slot = 0; slot < dayOfSlot.length; slot++) {
        if (!hasBit(open, slot)) continue;
        const cell = this.cellOf(centre, slot);
        this.open[cell]! += places.length;
        this.staying[cell]! += places.filter(({ free }) => !hasBit(free, slot)).length;
      }
    });
    this.add(this.shareOf(strangers), this.staying);
  }

  /** Slots taken of each cell. */
  of(held: Iterable<HeldTime>): Int32Array {
    const load = this.staying.slice();
    for (const each of held) this.add(this.shareOf(each), load);
    return load;
  }

  overloadOf(load: Int32Array): number {
    let sum = 0;
    for (let cell = 0; cell < load.length; cell++) sum += overloadOf(load[cell]!, this.open[cell]!);
    return sum;
  }

  /** Whether some of this time lies on a day that is overfull at its centre. */
  isOnFullDay(held: HeldTime, load: Int32Array): boolean {
    return this.shareOf(held).cells.some((cell) => overloadOf(load[cell]!, this.open[cell]!) > 0);
  }

  /**
   * All time of the days on which a centre can't take so many slots more without getting overfull.
   *
   * @param least slots, by centre; centres that are not in it stay as they are
   */
  fullTime(load: Int32Array, least: ReadonlyMap<string, number>): HeldTime {
    const full = new Map<string, SlotRange[]>();
    this.centres.forEach(({ key, places }, centre) => {
      const slots = least.get(key);
      if (slots === undefined) return;
      const days = this.slotsOfDay.filter((_, day) => {
        const cell = centre * this.dayCount + day;
        return this.open[cell]! > 0 && 100 * (load[cell]! + slots) > FULL_PERCENT * this.open[cell]!;
      });
      if (days.length > 0) for (const place of places) full.set(place.key, days);
    });
    return full;
  }

  private daysAsRanges(): SlotRange[] {
    const ranges = Array.from({ length: this.dayCount }, () => ({ startSlot: 0, endSlot: 0 }));
    this.dayOfSlot.forEach((day, slot) => {
      const range = ranges[day - this.firstDay]!;
      if (range.endSlot === 0) range.startSlot = slot;
      range.endSlot = slot + 1;
    });
    return ranges;
  }

  private cellOf(centre: number, slot: number): number {
    return centre * this.dayCount + this.dayOfSlot[slot]! - this.firstDay;
  }

  private add({ cells, slots }: Share, load: Int32Array): void {
    for (let index = 0; index < cells.length; index++) load[cells[index]!]! += slots[index]!;
  }

  /** Found again for the same time, which is never changed in place. */
  private shareOf(held: HeldTime): Share {
    let share = this.shares.get(held);
    if (share === undefined) {
      const sums = new Map<number, number>();
      for (const [key, ranges] of held) {
        const centre = this.centreOfPlace.get(key);
        if (centre === undefined) continue;
        for (const { startSlot, endSlot } of ranges) this.count(centre, startSlot, endSlot, sums);
      }
      share = { cells: Int32Array.from(sums.keys()), slots: Int32Array.from(sums.values()) };
      this.shares.set(held, share);
    }
    return share;
  }

  private count(centre: number, startSlot: number, endSlot: number, sums: Map<number, number>): void {
    const { open } = this.centres[centre]!;
    for (let slot = Math.max(0, startSlot); slot < Math.min(endSlot, this.dayOfSlot.length); slot++) {
      if (!hasBit(open, slot)) continue;
      const cell = this.cellOf(centre, slot);
      sums.set(cell, (sums.get(cell) ?? 0) + 1);
    }
  }
}
