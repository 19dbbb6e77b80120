import type { ShopLayout } from './shop-layout.js';

/**
 * A complete order of the operations on every machine, with the times that follow from it.
 *
 * A topological order is kept and repaired between the two ends of a move only, so that times are renewed by two plain
 * sweeps without queue or recursion. Nothing is allocated after the constructor.
 */
export class ShopGraph {
  readonly machine: Int32Array;
  readonly duration: Int32Array;
  /** Operation before and after on the machine, 0 where there is none. */
  readonly before: Int32Array;
  readonly after: Int32Array;
  readonly firstOn: Int32Array;
  /** Longest way from the start to the end of an operation. */
  readonly end: Int32Array;
  /** Longest way from the start of an operation to the end of all. */
  readonly tail: Int32Array;
  /** Topological order, and the place of each operation in it. */
  readonly order: Int32Array;
  readonly rank: Int32Array;
  makespan = 0;
  private readonly lastOn: Int32Array;
  private readonly isHeld: Uint8Array;
  private readonly held: Int32Array;

  constructor(readonly layout: ShopLayout) {
    const { size, machineCount } = layout;
    this.machine = new Int32Array(size);
    this.duration = new Int32Array(size);
    this.before = new Int32Array(size);
    this.after = new Int32Array(size);
    this.firstOn = new Int32Array(machineCount);
    this.end = new Int32Array(size);
    this.tail = new Int32Array(size);
    this.order = new Int32Array(layout.operations.length);
    this.rank = new Int32Array(size);
    this.lastOn = new Int32Array(machineCount);
    this.isHeld = new Uint8Array(size);
    this.held = new Int32Array(layout.operations.length);
  }

  /** Takes a list that respects the jobs and the machine of each id: what comes first in the list comes first there. */
  load(list: Int32Array, machines: Int32Array): void {
    const { layout, machine, duration, before, after, order, rank, firstOn, lastOn } = this;
    firstOn.fill(0);
    lastOn.fill(0);
    for (let at = 0; at < list.length; at++) {
      const id = list[at]!;
      const on = machines[id]!;
      order[at] = id;
      rank[id] = at;
      machine[id] = on;
      duration[id] = layout.durationOn[id * layout.machineCount + on]!;
      const previous = lastOn[on]!;
      before[id] = previous;
      after[id] = 0;
      if (previous === 0) firstOn[on] = id;
      else after[previous] = id;
      lastOn[on] = id;
    }
    this.renewTimes(0, list.length - 1);
  }

  /** Puts `id` right after `target` on its machine, where it stood before it. */
  moveAfter(id: number, target: number): void {
    const from = this.rank[id]!;
    this.unlink(id);
    this.link(id, this.machine[id]!, target);
    this.holdBack(id, target);
    this.renewTimes(from, this.rank[id]!);
  }

  /** Puts `id` right before `target` on its machine, where it stood after it. */
  moveBefore(id: number, target: number): void {
    const from = this.rank[id]!;
    this.unlink(id);
    this.link(id, this.machine[id]!, this.before[target]!);
    this.bringForward(id, target);
    this.renewTimes(this.rank[id]!, from);
  }

  /** Puts `id` on another machine, right after `previous` there, or first where `previous` is 0. */
  moveTo(id: number, machine: number, previous: number): void {
    const from = this.rank[id]!;
    this.unlink(id);
    this.machine[id] = machine;
    this.duration[id] = this.layout.durationOn[id * this.layout.machineCount + machine]!;
    this.link(id, machine, previous);
    const next = this.after[id]!;
    if (previous !== 0 && this.rank[previous]! > from) this.holdBack(id, previous);
    else if (next !== 0 && this.rank[next]! < from) this.bringForward(id, next);
    const to = this.rank[id]!;
    this.renewTimes(Math.min(from, to), Math.max(from, to));
  }

  private unlink(id: number): void {
    const previous = this.before[id]!;
    const next = this.after[id]!;
    if (previous === 0) this.firstOn[this.machine[id]!] = next;
    else this.after[previous] = next;
    if (next !== 0) this.before[next] = previous;
  }

  private link(id: number, machine: number, previous: number): void {
    const next = previous === 0 ? this.firstOn[machine]! : this.after[previous]!;
    this.before[id] = previous;
    this.after[id] = next;
    if (previous === 0) this.firstOn[machine] = id;
    else this.after[previous] = id;
    if (next !== 0) this.before[next] = id;
  }

  /** Repairs the order after `id` came to stand behind `target`: all that follows `id` goes behind it too. */
  private holdBack(id: number, target: number): void {
    const { order, rank, isHeld, held, before } = this;
    let to = rank[id]!;
    const last = rank[target]!;
    let count = 1;
    isHeld[id] = 1;
    held[0] = id;
    for (let at = to + 1; at <= last; at++) {
      const other = order[at]!;
      if ((isHeld[other - 1]! | isHeld[before[other]!]!) !== 0) {
        isHeld[other] = 1;
        held[count++] = other;
      } else {
        order[to] = other;
        rank[other] = to++;
      }
    }
    for (let at = 0; at < count; at++) {
      const other = held[at]!;
      isHeld[other] = 0;
      order[to] = other;
      rank[other] = to++;
    }
  }

  /** The mirror of `holdBack`: all that precedes `id` goes before `target` too. */
  private bringForward(id: number, target: number): void {
    const { order, rank, isHeld, held, after } = this;
    let to = rank[id]!;
    const first = rank[target]!;
    let count = 1;
    isHeld[id] = 1;
    held[0] = id;
    for (let at = to - 1; at >= first; at--) {
      const other = order[at]!;
      if ((isHeld[other + 1]! | isHeld[after[other]!]!) !== 0) {
        isHeld[other] = 1;
        held[count++] = other;
      } else {
        order[to] = other;
        rank[other] = to--;
      }
    }
    for (let at = 0; at < count; at++) {
      const other = held[at]!;
      isHeld[other] = 0;
      order[to] = other;
      rank[other] = to--;
    }
  }

  /** Renews ends from place `first` of the order on, and tails from place `last` down. */
  private renewTimes(first: number, last: number): void {
    const { order, end, tail, duration, before, after, layout } = this;
    for (let at = first; at < order.length; at++) {
      const id = order[at]!;
      const ofJob = end[id - 1]!;
      const ofMachine = end[before[id]!]!;
      end[id] = (ofJob > ofMachine ? ofJob : ofMachine) + duration[id]!;
    }
    for (let at = last; at >= 0; at--) {
      const id = order[at]!;
      const ofJob = tail[id + 1]!;
      const ofMachine = tail[after[id]!]!;
      tail[id] = (ofJob > ofMachine ? ofJob : ofMachine) + duration[id]!;
    }
    const { slotOfJob } = layout;
    let makespan = 0;
    for (let job = 1; job < slotOfJob.length; job++) {
      const last = slotOfJob[job]! - 1;
      // A job without operations ends where its own slot does, at 0.
      if (end[last]! > makespan) makespan = end[last]!;
    }
    this.makespan = makespan;
  }
}
