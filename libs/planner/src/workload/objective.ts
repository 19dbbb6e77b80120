import { hasBit } from '../chain/bits.js';
import type { WorkloadDecoder } from './decoder.js';
import type { WorkloadLayout } from './layout.js';
import type { CentreDay, WorkloadObjective } from './model.js';

/** Above this share of its open time a day at a centre has no room for what comes in between. Project default. */
export const FULL_PERCENT = 85;

/** Which of two plans that differ further down is better: what is kept as it is, or a level load. */
export type WorkloadAim = 'fewest-moves' | 'level-load';

export const ORDER: Readonly<Record<WorkloadAim, readonly (keyof WorkloadObjective)[]>> = {
  'fewest-moves': ['violations', 'lateness', 'disruption', 'overload', 'inProgress'],
  'level-load': ['violations', 'lateness', 'overload', 'disruption', 'inProgress'],
};

/** Below 0 when the first is better; 0 when they are equal in everything. */
export function compareObjectives(one: WorkloadObjective, other: WorkloadObjective, aim: WorkloadAim): number {
  for (const name of ORDER[aim]) if (one[name] !== other[name]) return one[name] - other[name];
  return 0;
}

/** What is above the full share of `openSlots`, squared: two half-full days are better than one that is full. */
export function overloadOf(loadSlots: number, openSlots: number): number {
  const over = Math.floor(Math.max(0, 100 * loadSlots - FULL_PERCENT * openSlots) / 100);
  return over * over;
}

/** Judges what a decoder has made. */
export class WorkloadJudge {
  private readonly dayCount: number;
  private readonly firstDay: number;
  /** Load of what stays and open slots, by centre and day. */
  private readonly fixed: Int32Array;
  private readonly open: Int32Array;
  private readonly load: Int32Array;
  private readonly fixedRuns: number;
  private readonly seen = new Set<number>();

  constructor(private readonly layout: WorkloadLayout) {
    const { problem, slotCount } = layout;
    const { dayOfSlot, centres } = problem;
    this.firstDay = dayOfSlot[0] ?? 0;
    this.dayCount = (dayOfSlot[slotCount - 1] ?? 0) - this.firstDay + 1;
    this.fixed = new Int32Array(centres.length * this.dayCount);
    this.open = new Int32Array(this.fixed.length);
    this.load = new Int32Array(this.fixed.length);
    this.fixedRuns = centres.reduce((sum, { openRuns }) => sum + openRuns.length, 0);
    centres.forEach(({ open, places }, centre) => {
      for (let slot = 0; slot < slotCount; slot++) {
        if (!hasBit(open, slot)) continue;
        const cell = this.cellOf(centre, slot);
        this.open[cell]! += places.length;
        this.fixed[cell]! += places.filter(({ free }) => !hasBit(free, slot)).length;
      }
    });
  }

  private cellOf(centre: number, slot: number): number {
    return centre * this.dayCount + this.layout.problem.dayOfSlot[slot]! - this.firstDay;
  }

  judge(decoder: WorkloadDecoder, chosen: Int32Array): WorkloadObjective {
    const { layout } = this;
    this.load.set(this.fixed);
    this.seen.clear();
    const sums = { violations: 0, lateness: 0, disruption: 0, inProgress: 0 };
    layout.problem.jobs.forEach(({ weight, alternatives }, job) => {
      const { dueSlot } = alternatives[chosen[job]!]!;
      let first = layout.slotCount;
      let last = 0;
      for (const id of layout.ofJob[job]![chosen[job]!]!) {
        const start = decoder.start[id]!;
        const end = start < 0 ? layout.slotCount : decoder.end[id]!;
        if (start >= 0 && start < first) first = start;
        if (end > last) last = end;
        sums.violations += this.violationsOf(decoder, id);
        if (this.isMoved(decoder, id, chosen[job]!)) sums.disruption++;
        if (start >= 0) this.addLoad(decoder, id);
      }
      sums.inProgress += Math.max(0, last - first);
      if (dueSlot !== null) sums.lateness += weight * Math.max(0, last - dueSlot);
    });
    return { ...sums, overload: this.overload() };
  }

  /** Load of what was judged last. */
  loadOfDays(): CentreDay[] {
    return [...this.open].flatMap((openSlots, cell): CentreDay[] => {
      if (openSlots === 0) return [];
      const centre = Math.floor(cell / this.dayCount);
      return [{ centre, day: this.firstDay + (cell % this.dayCount), loadSlots: this.load[cell]!, openSlots }];
    });
  }

  private violationsOf({ start, end }: WorkloadDecoder, id: number): number {
    const { last, before } = this.layout.operations[id]!;
    if (start[id]! < 0) return this.layout.slotCount;
    let over = Math.max(0, start[id]! - last);
    for (const { from, atEnd, hi } of before) {
      if (hi !== null) over += Math.max(0, start[id]! - hi[atEnd ? end[from]! : start[from]!]!);
    }
    return over;
  }

  /** Another laboratory moves all of a job's work; another place of the same bench at the same time moves nothing. */
  private isMoved(decoder: WorkloadDecoder, id: number, alternative: number): boolean {
    if (alternative !== 0) return true;
    const { currentStart } = this.layout.operations[id]!;
    return currentStart >= 0 && decoder.start[id] !== currentStart;
  }

  /** Open slots in which a place is kept; a run counts once, and not where it stays anyhow. */
  private addLoad({ start, run }: WorkloadDecoder, id: number): void {
    const { centre, shape } = this.layout.operations[id]!;
    if (run[id]! >= 0) {
      if (run[id]! < this.fixedRuns || this.seen.has(run[id]!)) return;
      this.seen.add(run[id]!);
    }
    const { open } = this.layout.problem.centres[centre]!;
    for (const { first, end } of shape.held) {
      for (let slot = first[start[id]!]!; slot < end[start[id]!]!; slot++) {
        if (hasBit(open, slot)) this.load[this.cellOf(centre, slot)]!++;
      }
    }
  }

  private overload(): number {
    let sum = 0;
    for (let cell = 0; cell < this.load.length; cell++) sum += overloadOf(this.load[cell]!, this.open[cell]!);
    return sum;
  }
}
