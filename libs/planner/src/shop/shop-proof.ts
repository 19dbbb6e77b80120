import { leastStanding } from './least-standing.js';
import type { ShopLayout } from './shop-layout.js';
import { ShopWindows } from './shop-windows.js';

/** Probes of an epoch times operations: about as much time as the search itself takes. */
const PROBE_WORK = 3000;
const MOST_PASSES = 3;

/**
 * Raises the bound of a machine shop: first to the least makespan that edge finding cannot refute, then step by step to
 * the least that shaving cannot: an operation that cannot start near its head starts later (Martin & Shmoys 1996).
 */
export class ShopProof {
  lowerBound: number;
  private readonly windows: ShopWindows;
  private readonly trial: ShopWindows;
  private readonly probesPerEpoch: number;
  private step = 1;
  /** Shaving does not refute it, so trying it, or more, again is of no use. */
  private standing: number;
  /** The makespan that is being tried, -1 for none, and how far shaving has got with it. */
  private value = -1;
  private next = 0;
  private pass = 0;
  private sumBefore = 0;
  private probesLeft = 0;

  /** @param makespan of a plan; nothing from there on is asked for */
  constructor(
    private readonly layout: ShopLayout,
    least: number,
    makespan: number,
  ) {
    this.windows = new ShopWindows(layout);
    this.trial = new ShopWindows(layout);
    this.probesPerEpoch = Math.ceil(PROBE_WORK / Math.max(1, layout.operations.length));
    this.standing = makespan;
    this.lowerBound = leastStanding(least, makespan, (value) => this.begin(value));
  }

  /** Spends an epoch's share of probes on refuting makespans below that of the best plan. */
  advance(makespan: number): void {
    this.standing = Math.min(this.standing, makespan);
    this.probesLeft = this.probesPerEpoch;
    while (this.probesLeft > 0 && this.lowerBound < this.standing) {
      if (this.value < 0 || this.value >= this.standing) {
        this.value = Math.min(this.lowerBound + this.step - 1, this.standing - 1);
        this.probesLeft--;
        if (!this.begin(this.value)) {
          this.refute();
          continue;
        }
      }
      if (!this.shaveNext()) this.refute();
      else if (this.hasFinished()) {
        this.standing = this.value;
        this.step = Math.max(1, this.step >> 2);
        this.value = -1;
      }
    }
  }

  private refute(): void {
    this.lowerBound = this.value + 1;
    this.step *= 2;
    this.value = -1;
  }

  /** Starts a trial with what edge finding says; false where that refutes it. */
  private begin(makespan: number): boolean {
    this.next = 0;
    this.pass = 0;
    this.windows.clear();
    const isOpen = this.windows.propagate(makespan);
    this.sumBefore = this.windows.sum();
    return isOpen;
  }

  /** Whether all operations have been probed without effect, or often enough. */
  private hasFinished(): boolean {
    if (this.next < 2 * this.layout.operations.length) return false;
    const sum = this.windows.sum();
    if (sum === this.sumBefore || ++this.pass === MOST_PASSES) return true;
    this.next = 0;
    this.sumBefore = sum;
    return false;
  }

  /** Shaves the head or the tail of one operation; false where that refutes the trial. */
  private shaveNext(): boolean {
    const { windows, trial, value } = this;
    const id = this.layout.operations[this.next >> 1]!;
    const isForward = (this.next++ & 1) === 0;
    const own = isForward ? windows.forward : windows.backward;
    const probed = isForward ? trial.forward : trial.backward;
    // Starts from the head on are refuted in stretches that double; one that stands ends the matter.
    for (let width = 1; windows.slack(id, value) >= width; width *= 2) {
      this.probesLeft--;
      trial.copy(windows);
      probed.tails[id] = value - own.heads[id]! - own.durations[id]! - width + 1;
      if (trial.propagate(value)) return true;
      own.heads[id]! += width;
      if (!windows.propagate(value)) return false;
    }
    return true;
  }
}
