import type { ProjectLayout } from './project-layout.js';

/** Longest way over all waits to the start of each activity, by rank. */
export function headsOf(layout: ProjectLayout, order: readonly number[]): Int32Array {
  const heads = new Int32Array(layout.count);
  for (const id of order) {
    for (let each = layout.lagsFrom[id]!; each < layout.lagsFrom[id + 1]!; each++) {
      heads[id] = Math.max(heads[id]!, heads[layout.lagOf[each]!]! + layout.lag[each]!);
    }
  }
  return heads;
}
