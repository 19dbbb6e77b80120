import type { ProjectLayout } from './project-layout.js';

/**
 * Turns a list of activities into a plan: each in turn at the first time at which its waits are over and its places are
 * free (serial schedule generation). Nothing is allocated after the constructor.
 */
export class Decoder {
  /** Plans made so far, in the measure that published results count. */
  schedules = 0;
  /** Used places, `[time * resourceCount + resource]`. */
  private readonly used: Int32Array;
  private dirty = 0;

  constructor(private readonly layout: ProjectLayout) {
    this.used = new Int32Array((layout.horizon + 1) * layout.resourceCount);
  }

  /**
   * @param list activities so that each comes after all that it waits for
   * @param starts filled with their starts
   * @returns the latest end
   */
  decode(list: Int32Array, starts: Int32Array): number {
    const { layout, used } = this;
    const { duration, lagsFrom, lagOf, lag } = layout;
    used.fill(0, 0, this.dirty);
    this.schedules++;
    let makespan = 0;
    for (let at = 0; at < list.length; at++) {
      const id = list[at]!;
      let start = 0;
      for (let each = lagsFrom[id]!; each < lagsFrom[id + 1]!; each++) {
        const ready = starts[lagOf[each]!]! + lag[each]!;
        if (ready > start) start = ready;
      }
      start = this.firstFree(id, start);
      starts[id] = start;
      this.take(id, start);
      const end = start + duration[id]!;
      if (end > makespan) makespan = end;
    }
    this.dirty = makespan * layout.resourceCount;
    return makespan;
  }

  /** Looks at a window from its end on: behind the last conflict is the next place to try. */
  private firstFree(id: number, from: number): number {
    const { used } = this;
    const { duration, needsFrom, neededResource, neededPlaces, capacities, resourceCount } = this.layout;
    const firstNeed = needsFrom[id]!;
    const endNeed = needsFrom[id + 1]!;
    let start = from;
    let checked = start;
    for (let time = start + duration[id]! - 1; time >= checked; time--) {
      const row = time * resourceCount;
      for (let need = firstNeed; need < endNeed; need++) {
        const resource = neededResource[need]!;
        if (used[row + resource]! + neededPlaces[need]! <= capacities[resource]!) continue;
        // All times behind this conflict, up to the old window's end, are known to be free.
        checked = start + duration[id]!;
        start = time + 1;
        time = start + duration[id]!;
        break;
      }
    }
    return start;
  }

  private take(id: number, start: number): void {
    const { used } = this;
    const { duration, needsFrom, neededResource, neededPlaces, resourceCount } = this.layout;
    const end = (start + duration[id]!) * resourceCount;
    for (let need = needsFrom[id]!; need < needsFrom[id + 1]!; need++) {
      const places = neededPlaces[need]!;
      for (let row = start * resourceCount + neededResource[need]!; row < end; row += resourceCount) {
        used[row]! += places;
      }
    }
  }
}
