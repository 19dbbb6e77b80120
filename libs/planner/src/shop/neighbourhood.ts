import type { SeededRandom } from '@archwright/kernel';
import {
  estimateAfter,
  estimateBefore,
  isAfterForbidden,
  isBeforeForbidden,
  mayMoveAfter,
  mayMoveBefore,
} from './move-estimates.js';
import type { ShopGraph } from './shop-graph.js';
import type { TabuList } from './tabu-list.js';

export const AFTER = 0;
export const BEFORE = 1;
export const TO_MACHINE = 2;

/** Of a critical way with more moves than this, the first ones are looked at. */
const MOST_MET = 200_000;

/**
 * Chooses one move from the neighbours of a graph: along one random critical way, an inner operation of a block of one
 * machine to the block's front or end, the first or last to the inside (N7: Zhang, Li, Guan & Rao 2007), and an
 * operation to each place on another machine that may do it. Only such moves can shorten the plan.
 */
export class Neighbourhood {
  /** What `choose` found: `AFTER` or `BEFORE` an operation, or `TO_MACHINE` after an operation there. */
  kind = AFTER;
  id = 0;
  target = 0;
  machine = 0;

  private move = 0;
  private record = 0;
  private estimate = 0;
  /** Legal moves met, four numbers each, and the places of the best of them that are not forbidden. */
  private readonly met: Int32Array;
  private readonly bestMet: Int32Array;
  private metCount = 0;
  private bestCount = 0;
  private readonly path: Int32Array;
  private readonly scratch: Int32Array;

  constructor(
    private readonly graph: ShopGraph,
    private readonly tabu: TabuList,
    private readonly random: SeededRandom,
  ) {
    const { layout, order } = graph;
    // Along a way of n operations: at most four moves for each, and every place on every other machine.
    const places = layout.isFlexible ? (order.length + layout.machineCount) * order.length : 0;
    const most = Math.min(MOST_MET, 4 * order.length + places);
    this.met = new Int32Array(4 * most);
    this.bestMet = new Int32Array(most);
    this.path = new Int32Array(graph.order.length);
    this.scratch = new Int32Array(graph.order.length);
  }

  /**
   * The best neighbour that is not forbidden or that promises less than `record`, else a random legal one.
   *
   * @returns whether there is any: without one, the plan cannot be shortened
   */
  choose(move: number, record: number): boolean {
    this.move = move;
    this.record = record;
    this.estimate = Number.MAX_SAFE_INTEGER;
    this.metCount = 0;
    this.bestCount = 0;
    const length = this.walk();
    const { machine } = this.graph;
    for (let first = 0; first < length;) {
      let last = first;
      while (last + 1 < length && machine[this.path[last + 1]!] === machine[this.path[first]!]) last++;
      this.addBlock(first, last, length);
      first = last + 1;
    }
    if (this.graph.layout.isFlexible) for (let at = 0; at < length; at++) this.addMachines(this.path[at]!);
    if (this.metCount === 0) return false;
    const chosen =
      this.bestCount > 0 ? this.bestMet[this.random.nextBelow(this.bestCount)]! : this.random.nextBelow(this.metCount);
    this.kind = this.met[4 * chosen]!;
    this.id = this.met[4 * chosen + 1]!;
    this.target = this.met[4 * chosen + 2]!;
    this.machine = this.met[4 * chosen + 3]!;
    return true;
  }

  /** Walks one critical way at random and returns its length. */
  private walk(): number {
    const { layout, tail, duration, after, makespan } = this.graph;
    let id = 0;
    let seen = 0;
    // Some critical way starts with the first operation of a job.
    for (let job = 0; job < layout.jobCount; job++) {
      const first = layout.slotOfJob[job]! + 1;
      if (tail[first] === makespan && (seen++ === 0 || this.random.nextBelow(seen) === 0)) id = first;
    }
    let length = 0;
    while (id !== 0) {
      this.path[length++] = id;
      const rest = tail[id]! - duration[id]!;
      if (rest === 0) break;
      const ofMachine = after[id]!;
      const byJob = tail[id + 1] === rest;
      const byMachine = ofMachine !== 0 && tail[ofMachine] === rest;
      id = byJob && (!byMachine || this.random.nextBelow(2) === 0) ? id + 1 : ofMachine;
    }
    return length;
  }

  /** Nothing is gained at the front of the first block, nor at the end of the last. */
  private addBlock(first: number, last: number, length: number): void {
    if (first === last) return;
    const { path } = this;
    const front = path[first]!;
    const end = path[last]!;
    if (last < length - 1) {
      for (let at = first; at < last; at++) this.addAfter(path[at]!, end);
      for (let at = first + 1; at < last; at++) this.addBefore(end, path[at]!);
    }
    if (first > 0) {
      for (let at = first + 1; at <= last; at++) this.addBefore(path[at]!, front);
      for (let at = first + 1; at < last; at++) this.addAfter(front, path[at]!);
    }
  }

  private addAfter(id: number, target: number): void {
    if (!mayMoveAfter(this.graph, id, target)) return;
    const estimate = estimateAfter(this.graph, id, target, this.scratch);
    const isForbidden = estimate >= this.record && isAfterForbidden(this.graph, this.tabu, id, target, this.move);
    this.offer(AFTER, id, target, 0, estimate, isForbidden);
  }

  private addBefore(id: number, target: number): void {
    if (!mayMoveBefore(this.graph, id, target)) return;
    const estimate = estimateBefore(this.graph, id, target, this.scratch);
    const isForbidden = estimate >= this.record && isBeforeForbidden(this.graph, this.tabu, id, target, this.move);
    this.offer(BEFORE, id, target, 0, estimate, isForbidden);
  }

  /** Places between operations that the job's neighbours cannot reach, or be reached from: no circle can arise there. */
  private addMachines(id: number): void {
    const { layout, machine, firstOn, end, tail, duration, after } = this.graph;
    const previousStart = end[id - 1]! - duration[id - 1]!;
    const isLast = layout.slotOfJob[layout.job[id]! + 1]! === id + 1;
    const isFirst = layout.slotOfJob[layout.job[id]!] === id - 1;
    for (let choice = layout.choicesFrom[id]!; choice < layout.choicesFrom[id + 1]!; choice++) {
      const on = layout.choices[choice]!;
      if (on === machine[id]) continue;
      const own = layout.durationOn[id * layout.machineCount + on]!;
      const isForbidden = this.tabu.isMachineForbidden(id, on, this.move);
      let previous = 0;
      let next = firstOn[on]!;
      for (;;) {
        const mustFollow = next !== 0 && !isFirst && (next === id - 1 || end[next]! <= previousStart);
        if (!mustFollow) {
          const estimate =
            Math.max(end[id - 1]!, end[previous]!) + own + Math.max(tail[id + 1]!, next === 0 ? 0 : tail[next]!);
          this.offer(TO_MACHINE, id, previous, on, estimate, isForbidden && estimate >= this.record);
        }
        const mustPrecede = !isLast && (next === id + 1 || end[next]! - duration[next]! >= end[id + 1]!);
        if (next === 0 || mustPrecede) break;
        previous = next;
        next = after[next]!;
      }
    }
  }

  private offer(
    kind: number,
    id: number,
    target: number,
    machine: number,
    estimate: number,
    isForbidden: boolean,
  ): void {
    if (this.metCount === this.bestMet.length) return;
    const at = this.metCount++;
    this.met[4 * at] = kind;
    this.met[4 * at + 1] = id;
    this.met[4 * at + 2] = target;
    this.met[4 * at + 3] = machine;
    if (isForbidden || estimate > this.estimate) return;
    if (estimate < this.estimate) this.bestCount = 0;
    this.estimate = estimate;
    this.bestMet[this.bestCount++] = at;
  }
}
