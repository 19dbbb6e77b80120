import { NoSpreadError } from '../errors.js';
import { requireSample } from '../sample/sample.js';
import { averageRanks } from './average-ranks.js';

export interface PettittTest {
  /** Position, from 0, of the last value before the change. */
  readonly lastBefore: number;
  readonly statistic: number;
  /** Approximate, two-sided. */
  readonly p: number;
}

/**
 * Where a series changes its level, if it does.
 *
 * @see Pettitt (1979), A non-parametric approach to the change-point problem, Applied Statistics 28:126-135
 */
export function pettitt(values: readonly number[]): PettittTest {
  requireSample('Pettitt', values, 4);
  const n = values.length;
  let rankSum = 0;
  let statistic = 0;
  let lastBefore = 0;
  averageRanks(values).forEach((rank, index) => {
    rankSum += rank;
    const distance = Math.abs(2 * rankSum - (index + 1) * (n + 1));
    if (distance > statistic) {
      statistic = distance;
      lastBefore = index;
    }
  });
  if (statistic === 0) throw new NoSpreadError('Pettitt');
  return { lastBefore, statistic, p: Math.min(1, 2 * Math.exp((-6 * statistic ** 2) / (n ** 3 + n ** 2))) };
}
