/** A half-open range of time `[startMs, endMs)` in epoch milliseconds. */
export interface Interval {
  readonly startMs: number;
  readonly endMs: number;
}

/**
 * Sorts, drops empty ranges, and joins ranges that overlap or touch.
 *
 * @returns the normalised list that every other function here takes: sorted, disjoint, not touching, none empty
 */
export function normalise(intervals: readonly Interval[]): Interval[] {
  const sorted = intervals.filter((each) => each.startMs < each.endMs).sort((a, b) => a.startMs - b.startMs);
  return joinSorted(sorted);
}

function joinSorted(sorted: Iterable<Interval>): Interval[] {
  const joined: Interval[] = [];
  let last: { startMs: number; endMs: number } | undefined;
  for (const { startMs, endMs } of sorted) {
    if (last && startMs <= last.endMs) {
      last.endMs = Math.max(last.endMs, endMs);
    } else {
      last = { startMs, endMs };
      joined.push(last);
    }
  }
  return joined;
}

/** Time in either of two normalised lists. */
export function union(a: readonly Interval[], b: readonly Interval[]): Interval[] {
  return joinSorted(merge(a, b));
}

function* merge(a: readonly Interval[], b: readonly Interval[]): Generator<Interval> {
  let j = 0;
  for (const each of a) {
    for (let other = b[j]; other && other.startMs < each.startMs; other = b[++j]) yield other;
    yield each;
  }
  yield* b.slice(j);
}

/** Time in both of two normalised lists. */
export function intersect(a: readonly Interval[], b: readonly Interval[]): Interval[] {
  const common: Interval[] = [];
  let i = 0;
  let j = 0;
  for (;;) {
    const left = a[i];
    const right = b[j];
    if (!left || !right) return common;
    const startMs = Math.max(left.startMs, right.startMs);
    const endMs = Math.min(left.endMs, right.endMs);
    if (startMs < endMs) common.push({ startMs, endMs });
    if (left.endMs < right.endMs) i++;
    else j++;
  }
}

/** Time in `from` that is not in `taken`; both lists normalised. */
export function subtract(from: readonly Interval[], taken: readonly Interval[]): Interval[] {
  const left: Interval[] = [];
  let j = 0;
  for (const each of from) {
    let startMs = each.startMs;
    for (let hole = taken[j]; hole && hole.startMs < each.endMs; hole = taken[j]) {
      if (startMs < hole.startMs) left.push({ startMs, endMs: hole.startMs });
      startMs = Math.max(startMs, hole.endMs);
      // A hole that reaches past this range may also cut the next one.
      if (hole.endMs > each.endMs) break;
      j++;
    }
    if (startMs < each.endMs) left.push({ startMs, endMs: each.endMs });
  }
  return left;
}

/** Whether the instant `ms` lies in a normalised list; the end of a range is outside. */
export function covers(list: readonly Interval[], ms: number): boolean {
  const candidate = list[firstEndingAfter(list, ms)];
  return candidate !== undefined && candidate.startMs <= ms;
}

/** Index of the first range of a normalised list that ends after `ms`; the list's length when there is none. */
export function firstEndingAfter(list: readonly Interval[], ms: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((list[middle]?.endMs ?? Infinity) <= ms) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Ranges of a list that share time with `range`, in their order.
 *
 * @param list sorted and disjoint; ranges may touch
 */
export function overlapping<Range extends Interval>(list: readonly Range[], range: Interval): Range[] {
  const found: Range[] = [];
  let index = firstEndingAfter(list, range.startMs);
  for (let each = list[index]; each && each.startMs < range.endMs; each = list[++index]) found.push(each);
  return found;
}

/** Length of a normalised list in minutes; a fraction when its ends are not on whole minutes. */
export function totalMinutes(list: readonly Interval[]): number {
  return list.reduce((sum, each) => sum + (each.endMs - each.startMs), 0) / 60_000;
}
