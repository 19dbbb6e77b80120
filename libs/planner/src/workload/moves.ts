import type { SeededRandom } from '@archwright/kernel';
import type { Genotype, WorkloadDecoder } from './decoder.js';
import type { LaidOperation, WorkloadLayout } from './layout.js';

/** Longest delay tried for the sake of a level load: three days of five-minute slots. */
const MOST_DELAY_SLOTS = 864;

/** Changes a genotype a little, at random. All that moves look at is the plan last decoded. */
export class WorkloadMoves {
  private readonly active: number[] = [];
  private readonly troubled: number[] = [];
  private readonly position: Int32Array;

  constructor(
    private readonly layout: WorkloadLayout,
    private readonly random: SeededRandom,
  ) {
    this.position = new Int32Array(layout.operations.length);
  }

  /** Notes which operations are planned, and which belong to jobs that are late or stand in no plan. */
  look(decoder: WorkloadDecoder, chosen: Int32Array): void {
    this.active.length = 0;
    this.troubled.length = 0;
    this.layout.ofJob.forEach((alternatives, job) => {
      const ids = alternatives[chosen[job]!]!;
      const due = this.layout.problem.jobs[job]!.alternatives[chosen[job]!]!.dueSlot ?? this.layout.slotCount;
      const isTroubled = ids.some((id) => decoder.start[id]! < 0 || decoder.end[id]! > due);
      for (const id of ids) {
        this.active.push(id);
        if (isTroubled) this.troubled.push(id);
      }
    });
  }

  /** @param decoder holds the plan that `genotype` was made from */
  change(genotype: Genotype, decoder: WorkloadDecoder): void {
    const { random } = this;
    const from = this.troubled.length > 0 && random.nextBelow(2) === 0 ? this.troubled : this.active;
    if (from.length === 0) return;
    const operation = this.layout.operations[from[random.nextBelow(from.length)]!]!;
    switch (random.nextBelow(9)) {
      case 0:
      case 1:
        this.shift(genotype.order, operation);
        break;
      case 2:
        genotype.notBefore[operation.id] = 0;
        break;
      case 3:
        genotype.notBefore[operation.id] = Math.max(0, operation.currentStart);
        break;
      case 4:
        this.delay(genotype, decoder, operation);
        break;
      case 5:
        this.joinRun(genotype, decoder, operation);
        break;
      case 6:
        this.bringForward(genotype, operation);
        break;
      case 7:
        genotype.repairs[operation.job]! ^= 1;
        break;
      default:
        this.chooseAnother(genotype, operation);
    }
  }

  /** To another place in the order, between what it waits for and what waits for it. */
  private shift(order: Int32Array, { id, before, after }: LaidOperation): void {
    order.forEach((each, at) => (this.position[each] = at));
    const first = before.reduce((most, { from }) => Math.max(most, this.position[from]! + 1), 0);
    const last = after.reduce((least, to) => Math.min(least, this.position[to]! - 1), order.length - 1);
    const at = this.position[id]!;
    const to = first + this.random.nextBelow(last - first + 1);
    if (to < at) order.copyWithin(to + 1, to, at);
    else order.copyWithin(at, at + 1, to + 1);
    order[to] = id;
  }

  private delay({ notBefore }: Genotype, { start }: WorkloadDecoder, { id, first, job, alternative }: LaidOperation) {
    const { slotCount, problem } = this.layout;
    const due = problem.jobs[job]!.alternatives[alternative]!.dueSlot ?? slotCount;
    const from = Math.max(first, start[id]!);
    const room = Math.min(MOST_DELAY_SLOTS, due - from);
    if (room > 0) notBefore[id] = Math.min(slotCount, from + this.random.nextBelow(room + 1));
  }

  /** Not before another operation of the same kind begins, so that both can share its run. */
  private joinRun({ notBefore }: Genotype, { start }: WorkloadDecoder, { id, units, shape }: LaidOperation): void {
    if (units === 0) return;
    const others = this.active.filter((other) => {
      const each = this.layout.operations[other]!;
      return other !== id && each.units > 0 && each.shape === shape && start[other]! >= 0;
    });
    if (others.length > 0) notBefore[id] = start[others[this.random.nextBelow(others.length)]!]!;
  }

  /** All of a job's work before everything else, as early as it can be. */
  private bringForward({ order, notBefore }: Genotype, { job }: LaidOperation): void {
    let at = order.length - 1;
    for (let from = order.length - 1; from >= 0; from--) {
      const id = order[from]!;
      if (this.layout.operations[id]!.job !== job) order[at--] = id;
    }
    // The lists of a job stand each operation after what it waits for.
    for (const id of this.layout.ofJob[job]!.flat().reverse()) {
      order[at--] = id;
      notBefore[id] = 0;
    }
  }

  private chooseAnother({ chosen }: Genotype, { job }: LaidOperation): void {
    const count = this.layout.ofJob[job]!.length;
    if (count > 1) chosen[job] = (chosen[job]! + 1 + this.random.nextBelow(count - 1)) % count;
  }
}
