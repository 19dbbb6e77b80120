/** First argument in `first .. end - 1` whose value reaches `bound`, `end` when none does; the values never decrease. */
export function firstAtLeast(valueOf: (at: number) => number, bound: number, first: number, end: number): number {
  let low = first;
  let high = end;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (valueOf(middle) < bound) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Last argument in `first .. last` whose value does not exceed `bound`, `first - 1` when none; the values never decrease. */
export function lastAtMost(valueOf: (at: number) => number, bound: number, first: number, last: number): number {
  return firstAtLeast(valueOf, bound + 1, first, last + 1) - 1;
}

/** First and last index that hold a value, in a table that never decreases and holds it. */
export function rangeOf(table: Int32Array, value: number): [first: number, last: number] {
  const first = firstAtLeast((at) => table[at]!, value, 0, table.length);
  return [first, lastAtMost((at) => table[at]!, value, first, table.length - 1)];
}
