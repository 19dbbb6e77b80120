import { LagNetwork } from './lag-network.js';
import { leastStanding } from './least-standing.js';
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
  return leastStanding(Math.max(least, base.earliest(base.sink)), most, stands);
}
