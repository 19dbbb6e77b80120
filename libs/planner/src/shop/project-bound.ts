import { jacksonBound } from './jackson.js';
import { layOutProject, reversed, topologicalOrder } from './project-layout.js';
import { headsOf } from './project-times.js';
import type { Project } from './project.js';

interface Bounded {
  readonly head: number;
  readonly duration: number;
  readonly tail: number;
  readonly needs: readonly number[];
}

/**
 * A makespan below which no plan can be: the critical path; for each resource the work that has to lie between a head
 * and a tail, shared by its places; and the pre-emptive schedule of activities of which no two fit beside each other.
 */
export function projectBound(project: Project): number {
  const order = topologicalOrder(project)!;
  const backOrder = [...order].reverse();
  const heads = headsOf(layOutProject(project, order), order);
  const tails = headsOf(layOutProject(reversed(project), backOrder), backOrder);
  const bounded = project.activities.map(({ duration, needs }, id): Bounded => ({
    head: heads[id]!,
    duration,
    tail: tails[id]!,
    needs,
  }));
  let bound = 0;
  for (const { head, duration, tail } of bounded) bound = Math.max(bound, head + duration + tail);
  project.capacities.forEach((capacity, resource) => {
    bound = Math.max(bound, workBound(bounded, resource, capacity));
  });
  for (const seed of bounded) bound = Math.max(bound, jacksonBound(exclusiveSet(seed, bounded, project.capacities)));
  return bound;
}

function workBound(activities: readonly Bounded[], resource: number, capacity: number): number {
  const own = activities
    .filter(({ duration, needs }) => duration > 0 && needs[resource]! > 0)
    .sort((a, b) => b.tail - a.tail);
  let bound = 0;
  for (const head of new Set(own.map((activity) => activity.head))) {
    let work = 0;
    for (const activity of own) {
      if (activity.head < head) continue;
      work += activity.duration * activity.needs[resource]!;
      bound = Math.max(bound, head + Math.ceil(work / capacity) + activity.tail);
    }
  }
  return bound;
}

/** Grown greedily from one activity, long ones first: no two of the set can run at once. */
function exclusiveSet(seed: Bounded, activities: readonly Bounded[], capacities: readonly number[]): Bounded[] {
  const set = [seed];
  for (const candidate of [...activities].sort((a, b) => b.duration - a.duration)) {
    if (candidate.duration > 0 && !set.includes(candidate) && set.every((other) => excludes(other, candidate))) {
      set.push(candidate);
    }
  }
  return set;

  function excludes(a: Bounded, b: Bounded): boolean {
    return capacities.some((capacity, resource) => a.needs[resource]! + b.needs[resource]! > capacity);
  }
}
