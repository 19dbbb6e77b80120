import { emptyBits } from './bits.js';
import type { SlotBits } from './model.js';

/**
 * Sets for the length of one step of the search, handed out again afterwards: a search makes thousands of them, and
 * making and collecting arrays would take longer than the work on them.
 */
export class BitsPool {
  private readonly sets: SlotBits[] = [];
  private used = 0;

  constructor(private readonly slotCount: number) {}

  /** An empty set, the caller's until the enclosing {@link scoped} call ends. */
  take(): SlotBits {
    const known = this.sets[this.used++];
    if (known !== undefined) return known.fill(0);
    const made = emptyBits(this.slotCount);
    this.sets.push(made);
    return made;
  }

  /** Runs `work`, then takes back every set that was handed out meanwhile: none of them may be part of its result. */
  scoped<T>(work: () => T): T {
    const before = this.used;
    try {
      return work();
    } finally {
      this.used = before;
    }
  }
}
