import { Bench } from './bench.js';
import type { LaidOperation, WorkloadLayout } from './layout.js';

/** How often the work before an operation is moved on so that a longest wait holds; then the limit counts as broken. */
const MOST_REPAIRS = 3;

/** A plan before it is made: in which order operations look for room, from when on, and which alternative of each job. */
export interface Genotype {
  /** All operations, each after those it waits for; those of alternatives not chosen are passed over. */
  readonly order: Int32Array;
  readonly notBefore: Int32Array;
  readonly chosen: Int32Array;
  /** By job, 1 when earlier work is moved on for a longest wait to hold. Where no plan keeps all waits, 0 can break less. */
  readonly repairs: Int32Array;
}

/**
 * Turns a genotype into starts and places: each operation in turn at its first fit (serial schedule generation, with
 * calendars). With everything open and one place a resource it makes the plan of the project decoder.
 */
export class WorkloadDecoder {
  /** By operation: -1 when it is in no chosen alternative, or there is no room for it. */
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly place: Int32Array;
  readonly run: Int32Array;
  private readonly floor: Int32Array;
  private readonly repairs: Uint8Array;
  private readonly done: Uint8Array;
  private readonly bench: Bench;

  constructor(private readonly layout: WorkloadLayout) {
    const count = layout.operations.length;
    this.start = new Int32Array(count);
    this.end = new Int32Array(count);
    this.place = new Int32Array(count);
    this.run = new Int32Array(count);
    this.floor = new Int32Array(count);
    this.repairs = new Uint8Array(count);
    this.done = new Uint8Array(count);
    this.bench = new Bench(layout);
  }

  decode({ order, notBefore, chosen, repairs }: Genotype): void {
    const { operations } = this.layout;
    this.bench.clear();
    this.start.fill(-1);
    this.end.fill(-1);
    this.place.fill(-1);
    this.run.fill(-1);
    this.floor.set(notBefore);
    this.repairs.fill(0);
    this.done.fill(0);
    for (let at = 0; at < order.length; at++) {
      const operation = operations[order[at]!]!;
      if (chosen[operation.job] !== operation.alternative || this.done[operation.id] === 1) continue;
      this.put(operation);
      const mayRepair = repairs[operation.job] === 1 && this.repairs[operation.id]! < MOST_REPAIRS;
      const blamed = mayRepair ? this.tooEarly(operation) : null;
      if (blamed === null) continue;
      this.repairs[operation.id]!++;
      at = this.takeBack(order, at, blamed) - 1;
    }
  }

  private put(operation: LaidOperation): void {
    const { bench, start, end } = this;
    const { id } = operation;
    this.done[id] = 1;
    let from = Math.max(operation.first, this.floor[id]!);
    for (const { from: before, atEnd, lo } of operation.before) {
      if (start[before]! < 0) return;
      if (lo !== null) from = Math.max(from, lo[atEnd ? end[before]! : start[before]!]!);
    }
    bench.fit(operation, from);
    if (bench.start < 0) return;
    bench.take(operation);
    start[id] = bench.start;
    end[id] = bench.run >= 0 ? bench.runs[bench.run]!.end : operation.shape.end[bench.start]!;
    this.place[id] = bench.place;
    this.run[id] = bench.run;
  }

  /** The operation before that has to be later for its longest wait to hold, its floor raised; `null` when all hold. */
  private tooEarly({ id, before }: LaidOperation): number | null {
    const { start, end, layout } = this;
    if (start[id]! < 0) return null;
    for (const { from, atEnd, hi } of before) {
      const anchor = atEnd ? end[from]! : start[from]!;
      if (hi === null || start[id]! <= hi[anchor]!) continue;
      let wanted = anchor + 1;
      while (wanted <= layout.slotCount && hi[wanted]! < start[id]!) wanted++;
      if (wanted > layout.slotCount) continue;
      this.floor[from] = start[from]! + (wanted - anchor);
      return from;
    }
    return null;
  }

  /** Takes an operation and what its job has placed since from their places; where to go on in the order. */
  private takeBack(order: Int32Array, at: number, blamed: number): number {
    const { operations } = this.layout;
    const { job } = operations[blamed]!;
    let position = at;
    for (;;) {
      const operation = operations[order[position]!]!;
      const { id } = operation;
      if (operation.job === job && this.done[id] === 1) {
        if (this.start[id]! >= 0) this.bench.giveBack(operation, this.start[id]!, this.place[id]!, this.run[id]!);
        this.done[id] = 0;
        this.start[id] = -1;
        this.end[id] = -1;
        this.place[id] = -1;
        this.run[id] = -1;
      }
      if (id === blamed) return position;
      position--;
    }
  }
}
