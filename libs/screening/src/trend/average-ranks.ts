/** Ranks from 1; equal values share the mean of their ranks. */
export function averageRanks(values: readonly number[]): number[] {
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!);
  const ranks = new Array<number>(values.length);
  for (let from = 0; from < order.length;) {
    let to = from;
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
    for (let at = from; at < to; at++) ranks[order[at]!] = (from + 1 + to) / 2;
    from = to;
  }
  return ranks;
}
