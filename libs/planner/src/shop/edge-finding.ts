/**
 * Operations of one machine, each with the earliest start that is known (`head`) and the time that has to pass after
 * its end (`tail`).
 */
export interface MachineWindows {
  readonly heads: Int32Array;
  readonly tails: Int32Array;
  readonly durations: Int32Array;
}

/**
 * Raises heads: an operation that cannot run before or among a set of others runs after all of them (edge finding, in
 * the quadratic form of Baptiste, Le Pape & Nuijten 2001). With heads and tails exchanged it raises tails.
 *
 * @param ids of the operations of the machine; sorted by head in passing
 * @returns false where some set does not fit between its heads and `makespan` less its tails
 */
export function raiseHeads(ids: Int32Array, { heads, tails, durations }: MachineWindows, makespan: number): boolean {
  ids.sort((a, b) => heads[a]! - heads[b]!);
  const count = ids.length;
  const raised = ids.map((id) => heads[id]!);
  const endFrom = new Int32Array(count);
  for (let last = 0; last < count; last++) {
    const deadline = makespan - tails[ids[last]!]!;
    // Operations that are due by then, from each head on: their work, and when it can be over.
    let work = 0;
    let end = -1;
    for (let at = count - 1; at >= 0; at--) {
      const id = ids[at]!;
      if (makespan - tails[id]! <= deadline) {
        work += durations[id]!;
        end = Math.max(end, heads[id]! + work);
        if (end > deadline) return false;
      }
      endFrom[at] = end;
    }
    let earlierEnd = -1;
    for (let at = 0; at < count; at++) {
      const id = ids[at]!;
      if (makespan - tails[id]! <= deadline) {
        earlierEnd = Math.max(earlierEnd, heads[id]! + work);
        work -= durations[id]!;
        continue;
      }
      if (heads[id]! + work + durations[id]! > deadline) raised[at] = Math.max(raised[at]!, endFrom[at]!);
      if (earlierEnd + durations[id]! > deadline) raised[at] = Math.max(raised[at]!, end);
    }
  }
  for (let at = 0; at < count; at++) heads[ids[at]!] = raised[at]!;
  return true;
}
