import { within } from './bits.js';
import { bestOf, type Best } from './best.js';
import { rangeOf } from './monotone.js';
import type { Objective } from './objective.js';
import type { PreparedChain } from './prepare.js';
import { between, firstStart, onlyStates, shrink, split, withStarts, type Region, type Witness } from './region.js';

interface Entry {
  readonly region: Region;
  /** No plan of the region costs less. */
  readonly bound: number;
  /** Its cheapest plan once known; else the region has still to be solved. */
  readonly best: Best | null;
}

/** Regions by rising bound; a solved one goes before an unsolved one of the same bound. */
class Queue {
  private readonly heap: Entry[] = [];

  push(entry: Entry): void {
    const { heap } = this;
    let at = heap.push(entry) - 1;
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!Queue.before(entry, heap[up]!)) break;
      heap[at] = heap[up]!;
      at = up;
    }
    heap[at] = entry;
  }

  pop(): Entry | undefined {
    const { heap } = this;
    const top = heap[0];
    const last = heap.pop();
    if (top === undefined || last === undefined || heap.length === 0) return top;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= heap.length) break;
      if (down + 1 < heap.length && Queue.before(heap[down + 1]!, heap[down]!)) down++;
      if (!Queue.before(heap[down]!, last)) break;
      heap[at] = heap[down]!;
      at = down;
    }
    heap[at] = last;
    return top;
  }

  private static before(a: Entry, b: Entry): boolean {
    return a.bound !== b.bound ? a.bound < b.bound : a.best !== null && b.best === null;
  }
}

/** Half day and clinician: two visits with equal ones count as the same choice. */
export interface Bucket {
  readonly halfDay: number;
  readonly clinician: string;
}

/** What makes a plan an offer of its own: one bucket per visit up to delivery. */
export function bucketsOf(prepared: PreparedChain, witness: Witness): Bucket[] {
  const { deliveryVisit, halfDayOfSlot } = prepared.problem;
  return Array.from({ length: deliveryVisit + 1 }, (_, visit) => ({
    halfDay: halfDayOfSlot[witness.starts[visit]!]!,
    clinician: witness.states[visit]!.clinician,
  }));
}

/** Visits up to delivery at which two plans differ, at least this many for two offers. */
const LEAST_DIFFERENCES = 2;

function differences(a: readonly Bucket[], b: readonly Bucket[]): number {
  return a.filter(({ halfDay, clinician }, visit) => halfDay !== b[visit]!.halfDay || clinician !== b[visit]!.clinician)
    .length;
}

function sameBucket(prepared: PreparedChain, region: Region, visit: number, bucket: Bucket): Region {
  const [first, last] = rangeOf(prepared.problem.halfDayOfSlot, bucket.halfDay);
  return between(
    onlyStates(region, visit, ({ clinician }) => clinician === bucket.clinician),
    visit,
    first,
    last,
  );
}

function otherBucket(prepared: PreparedChain, region: Region, visit: number, bucket: Bucket): Region {
  const [first, last] = rangeOf(prepared.problem.halfDayOfSlot, bucket.halfDay);
  return withStarts(region, visit, (bits, state) => {
    if (state.clinician !== bucket.clinician) return bits;
    const out = within(bits, 0, first - 1);
    const late = within(bits, last + 1, prepared.problem.slotCount - 1);
    for (let index = 0; index < out.length; index++) out[index]! |= late[index]!;
    return out;
  });
}

/** The plans of a region that differ from `buckets` at two visits, cut by the first two such visits. */
function apartFrom(prepared: PreparedChain, region: Region, buckets: readonly Bucket[]): Region[] {
  const parts: Region[] = [];
  let equal = region;
  for (let first = 0; first < buckets.length; first++) {
    let rest = otherBucket(prepared, equal, first, buckets[first]!);
    for (let second = first + 1; second < buckets.length; second++) {
      parts.push(otherBucket(prepared, rest, second, buckets[second]!));
      rest = sameBucket(prepared, rest, second, buckets[second]!);
    }
    equal = sameBucket(prepared, equal, first, buckets[first]!);
  }
  return parts;
}

/**
 * Gives the cheapest plans one after the other, each differing from all earlier ones at two visits up to delivery.
 *
 * Best first over regions: a region's cheapest plan off the relations is a bound for it, so the first plan taken from
 * the queue that keeps every relation is the cheapest of all.
 */
export function* cheapestPlans(
  prepared: PreparedChain,
  regions: readonly Region[],
  objective: Objective,
  taken: readonly (readonly Bucket[])[],
): Generator<Best, void, undefined> {
  const { problem } = prepared;
  const { weights, firstDay } = objective;
  const byDay = objective.order[0] === 'day';
  const queue = new Queue();
  const accepted = [...taken];
  for (const region of regions) queue.push({ region, bound: 0, best: null });
  for (let entry = queue.pop(); entry !== undefined; entry = queue.pop()) {
    const { region, bound, best } = entry;
    if (best === null) {
      let shrunk = shrink(prepared, region);
      if (shrunk === null) continue;
      if (byDay) {
        // Delivery on the first possible day beats all else: solve that day, keep the later ones for later.
        const slot = firstStart(shrunk, problem.deliveryVisit);
        const day = problem.dayOfSlot[slot]!;
        const [, end] = rangeOf(problem.dayOfSlot, day);
        const later = between(shrunk, problem.deliveryVisit, end + 1, problem.slotCount - 1);
        if (firstStart(later, problem.deliveryVisit) >= 0) {
          queue.push({ region: later, bound: Math.max(bound, (day + 1 - firstDay) * weights.day), best: null });
        }
        const dayBound = (day - firstDay) * weights.day;
        const onDay = between(shrunk, problem.deliveryVisit, slot, end);
        if (dayBound > bound) {
          queue.push({ region: onDay, bound: dayBound, best: null });
          continue;
        }
        shrunk = shrink(prepared, onDay);
        if (shrunk === null) continue;
      }
      const found = bestOf(prepared, shrunk, objective);
      if (found !== null) queue.push({ region: shrunk, bound: Math.max(bound, found.cost), best: found });
      continue;
    }
    const parts = split(prepared, region, best);
    if (parts !== null) {
      for (const part of parts) queue.push({ region: part, bound, best: null });
      continue;
    }
    const buckets = bucketsOf(prepared, best);
    let close = accepted.find((earlier) => differences(earlier, buckets) < LEAST_DIFFERENCES);
    if (close === undefined) {
      yield best;
      accepted.push(buckets);
      close = buckets;
    }
    for (const part of apartFrom(prepared, region, close)) queue.push({ region: part, bound, best: null });
  }
}
