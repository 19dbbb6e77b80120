import { givenUp, planned, type Draft, type JointPlanner } from './draft.js';
import { timeOf, type HeldTime } from './held-time.js';
import { costOf, isLess } from './joint-cost.js';

/** Cases that make room in turn, and plans tried for that, per case that has none. Project defaults. */
const DEPTH = 2;
export const MOST_TRIED = 60;

/**
 * Finds room for a case that fits nowhere: one other case gives up its bookings and is planned anew beside it, and where
 * that one fits nowhere either, a second one; or both at once. The cheapest of what is tried.
 */
export class Ejection {
  private tried = 0;

  constructor(private readonly planner: JointPlanner) {}

  /** The draft with a plan for the case and for whoever makes room; `null` when nothing tried gives one. */
  makeRoom(key: string, draft: Draft): Draft | null {
    this.tried = 0;
    return this.settle([key], draft, new Set());
  }

  private settle(queue: readonly string[], draft: Draft, ejected: ReadonlySet<string>): Draft | null {
    const [key, ...rest] = queue;
    if (key === undefined) return draft;
    if (this.tried >= MOST_TRIED) return null;
    this.tried++;
    const change = this.planner.change(key, draft);
    if (change !== null) return this.settle(rest, planned(draft, key, change), ejected);
    let best: Draft | null = null;
    for (const makingRoom of this.choices(key, draft, ejected, queue)) {
      if (this.tried >= MOST_TRIED) break;
      const freed = givenUp(draft, makingRoom);
      this.tried++;
      const own = this.planner.change(key, freed);
      if (own === null) continue;
      const settled = this.settle(
        [...makingRoom, ...rest],
        planned(freed, key, own),
        new Set([...ejected, key, ...makingRoom]),
      );
      if (settled !== null && (best === null || this.isBetter(settled, best))) best = settled;
    }
    return best;
  }

  private isBetter(one: Draft, other: Draft): boolean {
    const { question } = this.planner;
    return isLess(costOf(one, question), costOf(other, question));
  }

  /** Who might make room: cases in the way of the plan that there would be without any of them, one by one, then two at once. */
  private choices(key: string, draft: Draft, ejected: ReadonlySet<string>, queue: readonly string[]): string[][] {
    const makingRoom = [...ejected].filter((each) => this.isNeighbour(each)).length;
    if (makingRoom >= DEPTH) return [];
    const free = this.planner.question.neighbours
      .map((each) => each.key)
      .filter((other) => other !== key && !ejected.has(other) && !queue.includes(other) && draft.held.has(other));
    this.tried++;
    const wish = this.planner.change(key, givenUp(draft, free));
    if (wish === null) return [];
    const wanted = timeOf(wish.plan);
    const inTheWay = free.filter((other) => overlap(wanted, draft.held.get(other) ?? new Map()));
    const single = [...inTheWay, ...free.filter((other) => !inTheWay.includes(other))].map((other) => [other]);
    return inTheWay.length === 2 && makingRoom === 0 ? [inTheWay, ...single] : single;
  }

  private isNeighbour(key: string): boolean {
    return this.planner.question.neighbours.some((each) => each.key === key);
  }
}

/** Whether two plans want a resource at the same time. */
export function overlap(one: HeldTime, other: HeldTime): boolean {
  const [few, many] = one.size <= other.size ? [one, other] : [other, one];
  for (const [key, ranges] of few) {
    const against = many.get(key);
    if (against === undefined) continue;
    if (ranges.some((a) => against.some((b) => a.startSlot < b.endSlot && b.startSlot < a.endSlot))) return true;
  }
  return false;
}
