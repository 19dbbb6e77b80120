import type { Project } from './project.js';

/** No way leads from one start to another. Two of it and a lag still fit into 32 bits. */
const NONE = -(2 ** 30);

/**
 * The longest way between any two starts of a project, over all lags: what one start says of every other. A start of
 * the whole and an end of the whole stand behind the activities.
 */
export class LagNetwork {
  readonly size: number;
  /** `[from * size + to]`: `to` starts so much after `from` or later; negative for "so much before, at most". */
  readonly longest: Int32Array;
  readonly source: number;
  readonly sink: number;

  constructor(readonly project: Project) {
    const { activities } = project;
    this.size = activities.length + 2;
    this.source = activities.length;
    this.sink = activities.length + 1;
    this.longest = new Int32Array(this.size * this.size).fill(NONE);
    for (let id = 0; id < this.size; id++) this.longest[id * this.size + id] = 0;
    this.add(this.source, this.sink, 0);
    activities.forEach(({ duration }, id) => {
      this.add(this.source, id, 0);
      this.add(id, this.sink, duration);
    });
  }

  copy(other: LagNetwork): void {
    this.longest.set(other.longest);
  }

  earliest(id: number): number {
    return this.longest[this.source * this.size + id]!;
  }

  /** Known once a longest end is set. */
  latest(id: number): number {
    return -this.longest[id * this.size + this.source]!;
  }

  between(from: number, to: number): number {
    return this.longest[from * this.size + to]!;
  }

  /** Whether `to` can still start `lag` after `from`, or later. */
  allows(from: number, to: number, lag: number): boolean {
    return this.longest[to * this.size + from]! + lag <= 0;
  }

  /** Takes a lag up. Returns false, and leaves everything, where it contradicts the others. */
  add(from: number, to: number, lag: number): boolean {
    const { longest, size } = this;
    if (longest[to * size + from]! + lag > 0) return false;
    if (longest[from * size + to]! >= lag) return true;
    const behind = to * size;
    for (let before = 0; before < size; before++) {
      const reach = longest[before * size + from]!;
      if (reach === NONE) continue;
      const row = before * size;
      if (longest[row + to]! >= reach + lag) continue;
      for (let after = 0; after < size; after++) {
        const rest = longest[behind + after]!;
        if (rest !== NONE && longest[row + after]! < reach + lag + rest) longest[row + after] = reach + lag + rest;
      }
    }
    return true;
  }

  /** Sets the longest end of the whole; false where the lags alone take longer. */
  endBy(makespan: number): boolean {
    return this.add(this.sink, this.source, -makespan);
  }
}

/** All lags of a project; null where some contradict each other. */
export function lagNetworkOf(project: Project): LagNetwork | null {
  const network = new LagNetwork(project);
  return project.lags.every(({ from, to, lag }) => network.add(from, to, lag)) ? network : null;
}
