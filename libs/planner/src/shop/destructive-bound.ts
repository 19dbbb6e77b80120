import { LagNetwork } from './lag-network.js';
import type { Propagation } from './propagate.js';

/**
 * The least makespan that propagation cannot refute: every shorter one is impossible (destructive bound, Klein & Scholl
 * 1999). What refutes one makespan refutes every shorter one, so the bound is found by halving.
 *
 * @param base the lags alone, without a longest end
 * @param least a bound that is known already
 * @param most a makespan that stands, or from which on nothing is asked
 */
export function destructiveBound(base: LagNetwork, propagation: Propagation, least: number, most: number): number {
  const trial = new LagNetwork(base.project);
  const stands = (makespan: number): boolean => {
    trial.copy(base);
    return trial.endBy(makespan) && propagation.run(trial);
  };
  let low = Math.max(least, base.earliest(base.sink));
  if (low >= most || stands(low)) return Math.min(low, most);
  // Most bounds lie close to the first one: steps that double find the stretch to halve.
  let step = 1;
  for (; low + step < most && !stands(low + step); step *= 2) low += step;
  let high = Math.min(low + step, most);
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stands(middle)) high = middle;
    else low = middle;
  }
  return high;
}
