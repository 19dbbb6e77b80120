/** An operation of one machine: it is ready at `head`, and `tail` has to pass after its end. */
export interface OneMachineOperation {
  readonly head: number;
  readonly duration: number;
  readonly tail: number;
}

/**
 * Makespan of Jackson's pre-emptive schedule: the ready operation with the longest tail runs. It is the best one if
 * operations may be interrupted, so no plan without interruption is shorter (Carlier 1982).
 */
export function jacksonBound(operations: readonly OneMachineOperation[]): number {
  const byHead = [...operations].sort((a, b) => a.head - b.head);
  const left = byHead.map(({ duration }) => duration);
  let now = 0;
  let arrived = 0;
  let bound = 0;
  for (;;) {
    while (arrived < byHead.length && byHead[arrived]!.head <= now) arrived++;
    let chosen = -1;
    for (let at = 0; at < arrived; at++) {
      if (left[at]! > 0 && (chosen < 0 || byHead[at]!.tail > byHead[chosen]!.tail)) chosen = at;
    }
    const nextHead = byHead[arrived]?.head ?? Number.MAX_SAFE_INTEGER;
    if (chosen < 0) {
      if (arrived === byHead.length) return bound;
      now = nextHead;
      continue;
    }
    const run = Math.min(left[chosen]!, nextHead - now);
    now += run;
    left[chosen]! -= run;
    if (left[chosen] === 0) bound = Math.max(bound, now + byHead[chosen]!.tail);
  }
}
