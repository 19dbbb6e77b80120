/**
 * The least value that stands, where every value from some one on does; each smaller one is refuted.
 *
 * @param low nothing below is asked for
 * @param most stands, or nothing from there on is asked for
 */
export function leastStanding(low: number, most: number, stands: (value: number) => boolean): number {
  if (low >= most || stands(low)) return Math.min(low, most);
  // Most bounds lie close to the first one: steps that double find the stretch to halve.
  let refuted = low;
  let step = 1;
  for (; refuted + step < most && !stands(refuted + step); step *= 2) refuted += step;
  let high = Math.min(refuted + step, most);
  while (high - refuted > 1) {
    const middle = (refuted + high) >> 1;
    if (stands(middle)) high = middle;
    else refuted = middle;
  }
  return high;
}
