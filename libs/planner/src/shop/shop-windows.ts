import { leastDuration } from './construct.js';
import { raiseHeads, type MachineWindows } from './edge-finding.js';
import type { ShopLayout } from './shop-layout.js';

/**
 * Heads and tails of all operations under a longest makespan, and what follows from them along the jobs and on the
 * machines. Only operations with a single machine count there; others take part through their jobs.
 */
export class ShopWindows {
  readonly forward: MachineWindows;
  readonly backward: MachineWindows;
  private readonly machines: readonly Int32Array[];

  constructor(private readonly layout: ShopLayout) {
    const { size, machineCount, operations, choices, choicesFrom } = layout;
    const durations = new Int32Array(size);
    for (const id of operations) durations[id] = leastDuration(layout, id);
    this.forward = { heads: new Int32Array(size), tails: new Int32Array(size), durations };
    this.backward = { heads: this.forward.tails, tails: this.forward.heads, durations };
    this.machines = Array.from({ length: machineCount }, (_, machine) =>
      operations.filter(
        (id) => choicesFrom[id + 1]! - choicesFrom[id]! === 1 && choices[choicesFrom[id]!]! === machine,
      ),
    );
  }

  clear(): void {
    this.forward.heads.fill(0);
    this.forward.tails.fill(0);
  }

  copy({ forward }: ShopWindows): void {
    this.forward.heads.set(forward.heads);
    this.forward.tails.set(forward.tails);
  }

  /** Raises heads and tails until nothing more follows; false where no plan of the makespan is left. */
  propagate(makespan: number): boolean {
    for (let before = -1; ;) {
      this.passAlongJobs();
      for (const ids of this.machines) {
        if (!raiseHeads(ids, this.forward, makespan) || !raiseHeads(ids, this.backward, makespan)) return false;
      }
      const sum = this.sum();
      if (sum === before) return this.layout.operations.every((id) => this.slack(id, makespan) >= 0);
      before = sum;
    }
  }

  /** Heads and tails only grow, so their sum tells whether any did. */
  sum(): number {
    const { heads, tails } = this.forward;
    let sum = 0;
    for (let id = 0; id < heads.length; id++) sum += heads[id]! + tails[id]!;
    return sum;
  }

  /** How much later than its head an operation can start. */
  slack(id: number, makespan: number): number {
    const { heads, tails, durations } = this.forward;
    return makespan - heads[id]! - durations[id]! - tails[id]!;
  }

  /** The slot of a job keeps head, tail and duration of 0, so neighbours need no question. */
  private passAlongJobs(): void {
    const { heads, tails, durations } = this.forward;
    const { operations } = this.layout;
    for (const id of operations) heads[id] = Math.max(heads[id]!, heads[id - 1]! + durations[id - 1]!);
    for (let at = operations.length - 1; at >= 0; at--) {
      const id = operations[at]!;
      tails[id] = Math.max(tails[id]!, tails[id + 1]! + durations[id + 1]!);
    }
  }
}
