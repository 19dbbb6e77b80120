import type { SeededRandom } from '@archwright/kernel';
import type { ProjectLayout } from './project-layout.js';

/** A plan of one direction of time, and how good it is; smaller is better. */
export interface Individual {
  makespan: number;
  /** Makespan first; among equals, work done early leaves room to move. */
  fitness: number;
  readonly starts: Int32Array;
}

/** Makes lists for one direction of time out of plans of the other, whose mirror they are. */
export class Breeder {
  private readonly keys: Float64Array;
  private readonly byRank: Int32Array;

  /** @param layout of the direction in which the lists will be decoded */
  constructor(
    private readonly layout: ProjectLayout,
    order: readonly number[],
  ) {
    this.keys = new Float64Array(layout.count);
    this.byRank = Int32Array.from(order);
  }

  /** The plan itself, seen from its end: decoded, it never gets longer (justification). */
  mirror(plan: Individual, into: Int32Array): void {
    for (let id = 0; id < this.layout.count; id++) this.setKey(id, 0, this.mirrored(plan, id));
    this.sort(into);
  }

  /**
   * Keeps what `father` does in a window of time, and what `mate` does before and after it. The father alone says which
   * part an activity belongs to, so that no list breaks a precedence.
   */
  cross(father: Individual, mate: Individual, random: SeededRandom, into: Int32Array): void {
    const length = Math.floor((father.makespan * (25 + random.nextBelow(51))) / 100);
    const from = random.nextBelow(father.makespan - length + 1);
    for (let id = 0; id < this.layout.count; id++) {
      const own = this.mirrored(father, id);
      if (own < from) this.setKey(id, 0, this.mirrored(mate, id));
      else if (own < from + length) this.setKey(id, 1, own);
      else this.setKey(id, 2, this.mirrored(mate, id));
    }
    this.sort(into);
    for (let round = 0; round < 2; round++) if (random.nextBelow(2) === 0) this.push(into, random);
  }

  private mirrored({ makespan, starts }: Individual, id: number): number {
    return makespan - starts[id]! - this.layout.duration[id]!;
  }

  private setKey(id: number, part: number, time: number): void {
    const { layout } = this;
    this.keys[id] = (part * (layout.horizon + 1) + time) * layout.count + layout.rank[id]!;
  }

  private sort(into: Int32Array): void {
    const { keys, byRank } = this;
    keys.sort();
    for (let at = 0; at < keys.length; at++) into[at] = byRank[keys[at]! % keys.length]!;
  }

  /** Pushes one activity up to eight places back, until one that waits for it stands in the way. */
  private push(list: Int32Array, random: SeededRandom): void {
    let at = random.nextBelow(list.length);
    const id = list[at]!;
    const end = Math.min(list.length - 1, at + 1 + random.nextBelow(8));
    for (; at < end && !this.waitsFor(list[at + 1]!, id); at++) list[at] = list[at + 1]!;
    list[at] = id;
  }

  private waitsFor(later: number, earlier: number): boolean {
    const { lagsFrom, lagOf } = this.layout;
    for (let each = lagsFrom[later]!; each < lagsFrom[later + 1]!; each++) if (lagOf[each] === earlier) return true;
    return false;
  }
}
