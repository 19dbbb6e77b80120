import type { SeededRandom } from '@archwright/kernel';
import type { ProjectLayout } from './project-layout.js';

/**
 * A random list that respects the precedences; of the activities that may come next, those that have to start early
 * are likelier.
 *
 * @param latestStart of each activity when the plan is as long as its critical path
 */
export function sampleList(
  layout: ProjectLayout,
  followers: readonly (readonly number[])[],
  latestStart: Int32Array,
  random: SeededRandom,
  into: Int32Array,
): void {
  const waiting = new Int32Array(layout.count);
  const open: number[] = [];
  for (let id = 0; id < layout.count; id++) {
    waiting[id] = layout.lagsFrom[id + 1]! - layout.lagsFrom[id]!;
    if (waiting[id] === 0) open.push(id);
  }
  for (let at = 0; at < into.length; at++) {
    const latest = open.reduce((most, id) => Math.max(most, latestStart[id]!), 0);
    let ticket = random.nextBelow(open.reduce((sum, id) => sum + latest - latestStart[id]! + 1, 0));
    let chosen = 0;
    while ((ticket -= latest - latestStart[open[chosen]!]! + 1) >= 0) chosen++;
    const id = open[chosen]!;
    open[chosen] = open.at(-1)!;
    open.pop();
    into[at] = id;
    for (const follower of followers[id]!) if (--waiting[follower]! === 0) open.push(follower);
  }
}
