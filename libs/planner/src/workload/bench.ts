import { setRange } from '../chain/bits.js';
import type { LaidOperation, WorkloadLayout } from './layout.js';
import type { HeldSegment } from './shape.js';

/** Several operations that share one place and time. */
interface Run {
  readonly centre: number;
  readonly start: number;
  readonly end: number;
  /** Number of its place. */
  readonly place: number;
  freeUnits: number;
  /** Operations in it; a run of the plan in force that stays is never empty. */
  members: number;
  readonly stays: boolean;
}

/**
 * The time of all places while a plan is made. `fit` looks for room and leaves what it found in `start`, `place` and
 * `run`; `take` keeps it. Nothing but runs is allocated after the constructor.
 */
export class Bench {
  /** What `fit` found: start, -1 when there is no room on the axis. */
  start = -1;
  /** Number of the place, -1 when none is held. */
  place = -1;
  /** Index of the run joined, or -1. */
  run = -1;
  readonly runs: Run[] = [];
  private readonly words: number;
  private readonly fixed: Uint32Array;
  private readonly taken: Uint32Array;
  private readonly scratch: Uint32Array;

  constructor(private readonly layout: WorkloadLayout) {
    const { problem, placesFrom, slotCount } = layout;
    this.words = (slotCount + 31) >> 5;
    this.fixed = new Uint32Array(placesFrom.at(-1)! * this.words);
    this.scratch = new Uint32Array(this.words);
    problem.centres.forEach(({ places }, centre) => {
      places.forEach(({ free }, index) => {
        const from = (placesFrom[centre]! + index) * this.words;
        for (let word = 0; word < this.words; word++) this.fixed[from + word] = ~free[word]!;
      });
    });
    this.taken = this.fixed.slice();
    this.clear();
  }

  /** Empties all places but for what stays. */
  clear(): void {
    this.taken.set(this.fixed);
    this.runs.length = 0;
    this.layout.problem.centres.forEach(({ openRuns }, centre) => {
      for (const { place, startSlot, endSlot, freeUnits } of openRuns) {
        this.runs.push({
          centre,
          start: startSlot,
          end: endSlot,
          place: this.layout.placesFrom[centre]! + place,
          freeUnits,
          members: 1,
          stays: true,
        });
      }
    });
  }

  /** The first start from `from` on; of equal ones at the place of the plan in force, then in an open run. */
  fit(operation: LaidOperation, from: number): void {
    const { placesFrom, nextOpen, slotCount } = this.layout;
    const { centre, shape, holdsPlace, currentPlace, units } = operation;
    this.start = -1;
    this.place = -1;
    this.run = -1;
    if (from > slotCount) return;
    const earliest = nextOpen[centre]![from]!;
    if (!holdsPlace) {
      if (earliest <= slotCount && shape.end[earliest]! <= slotCount) this.start = earliest;
      return;
    }
    let best = slotCount + 1;
    if (currentPlace >= 0) {
      best = this.fitAt(operation, currentPlace, earliest, best);
      if (best <= slotCount) this.place = currentPlace;
    }
    for (let place = placesFrom[centre]!; place < placesFrom[centre + 1]! && best > earliest; place++) {
      if (place === currentPlace) continue;
      const start = this.fitAt(operation, place, earliest, best);
      if (start >= best) continue;
      best = start;
      this.place = place;
    }
    if (best <= slotCount) this.start = best;
    if (units > 0) this.joinEarlier(operation, from, best);
  }

  /** A run with room that starts no later than one of its own would. */
  private joinEarlier({ centre, shape, units }: LaidOperation, from: number, own: number): void {
    let best = own;
    for (let index = 0; index < this.runs.length; index++) {
      const run = this.runs[index]!;
      if (run.centre !== centre || run.freeUnits < units || run.members === 0 || run.start < from) continue;
      if (run.start > best || (run.start === best && this.run >= 0)) continue;
      if (!run.stays && run.end !== shape.end[run.start]!) continue;
      if (run.stays && run.end - run.start !== shape.leastSlots) continue;
      best = run.start;
      this.start = run.start;
      this.place = run.place;
      this.run = index;
    }
  }

  /** First start at one place that is before `limit`; `limit` when there is none. */
  private fitAt({ centre, shape }: LaidOperation, place: number, from: number, limit: number): number {
    const { end, held } = shape;
    const { slotCount, nextOpen } = this.layout;
    const next = nextOpen[centre]!;
    let start = from;
    while (start < limit && end[start]! <= slotCount) {
      let conflict = -1;
      for (const segment of held) {
        conflict = this.lastTaken(place, centre, segment, start);
        if (conflict < 0) continue;
        // Behind the last conflict of this segment is the next start to try.
        do start = next[start + 1]!;
        while (start <= slotCount && end[start]! <= slotCount && segment.first[start]! <= conflict);
        break;
      }
      if (conflict < 0) return start;
    }
    return limit;
  }

  /** The last slot that a segment wants and that is taken, or -1. */
  private lastTaken(place: number, centre: number, { first, end, pauses }: HeldSegment, start: number): number {
    const { taken, words } = this;
    const open = this.layout.problem.centres[centre]!.open;
    const from = first[start]!;
    const last = end[start]! - 1;
    const base = place * words;
    for (let word = last >> 5; word >= from >> 5; word--) {
      let bits = taken[base + word]!;
      if (pauses) bits &= open[word]!;
      if (word === last >> 5) bits &= -1 >>> (31 - (last & 31));
      if (word === from >> 5) bits &= -1 << (from & 31);
      if (bits !== 0) return (word << 5) + 31 - Math.clz32(bits);
    }
    return -1;
  }

  /** Keeps what the last `fit` found for this operation. */
  take(operation: LaidOperation): void {
    const { centre, shape, units } = operation;
    if (this.run >= 0) {
      const run = this.runs[this.run]!;
      run.freeUnits -= units;
      run.members++;
      return;
    }
    if (this.place < 0) return;
    this.mark(operation, this.place, this.start, true);
    if (units === 0) return;
    const size = this.layout.problem.centres[centre]!.runSize ?? units;
    this.run = this.runs.length;
    this.runs.push({
      centre,
      start: this.start,
      end: shape.end[this.start]!,
      place: this.place,
      freeUnits: size - units,
      members: 1,
      stays: false,
    });
  }

  /** Gives back what an operation holds. */
  giveBack(operation: LaidOperation, start: number, place: number, runIndex: number): void {
    if (place < 0) return;
    if (runIndex >= 0) {
      const run = this.runs[runIndex]!;
      run.freeUnits += operation.units;
      run.members--;
      if (run.members > 0) return;
    }
    this.mark(operation, place, start, false);
  }

  private mark({ centre, shape }: LaidOperation, place: number, start: number, isTaken: boolean): void {
    const { scratch, taken, words } = this;
    const open = this.layout.problem.centres[centre]!.open;
    for (const { first, end, pauses } of shape.held) {
      const firstWord = first[start]! >> 5;
      const lastWord = (end[start]! - 1) >> 5;
      scratch.fill(0, firstWord, lastWord + 1);
      setRange(scratch, first[start]!, end[start]! - 1);
      for (let word = firstWord; word <= lastWord; word++) {
        const bits = pauses ? scratch[word]! & open[word]! : scratch[word]!;
        if (isTaken) taken[place * words + word]! |= bits;
        else taken[place * words + word]! &= ~bits;
      }
    }
  }
}
