import { OptionError } from '../errors.js';
import { requirePairs } from '../sample/sample.js';

export interface AttributeChart {
  /** Overall share or rate. */
  readonly centre: number;
  readonly upper: readonly number[];
  /** Cut at zero. */
  readonly lower: readonly number[];
  /** Positions, from 0, beyond a limit. */
  readonly outside: readonly number[];
}

function attributeChart(
  method: string,
  counts: readonly number[],
  sizes: readonly number[],
  sigmaAt: (centre: number, size: number) => number,
): AttributeChart {
  requirePairs(method, counts, sizes, 2);
  for (const size of sizes) if (size <= 0) throw new OptionError(method, 'size', size, 'a number above 0');
  for (const count of counts) if (count < 0) throw new OptionError(method, 'count', count, 'a number from 0 on');
  const total = (of: readonly number[]) => of.reduce((sum, value) => sum + value, 0);
  const centre = total(counts) / total(sizes);
  const widths = sizes.map((size) => 3 * sigmaAt(centre, size));
  const upper = widths.map((width) => centre + width);
  const lower = widths.map((width) => Math.max(0, centre - width));
  const outside = counts.flatMap((count, index) => {
    const rate = count / sizes[index]!;
    return rate > upper[index]! || rate < lower[index]! ? [index] : [];
  });
  return { centre, upper, lower, outside };
}

/**
 * Chart of a share, such as remakes of dentures placed per month. For groups below about 20 the limits are rough:
 * prefer the exact tails of {@link funnel}.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2
 */
export function shareChart(counts: readonly number[], sizes: readonly number[]): AttributeChart {
  counts.forEach((count, index) => {
    const size = sizes[index];
    if (size !== undefined && count > size)
      throw new OptionError('p chart', 'count', count, `at most its size, ${String(size)}`);
  });
  return attributeChart('p chart', counts, sizes, (p, n) => Math.sqrt((p * (1 - p)) / n));
}

/** Chart of a rate per unit, such as adjustments per denture. @see NIST/SEMATECH e-Handbook, 6.3.3.1 */
export const rateChart = (counts: readonly number[], sizes: readonly number[]): AttributeChart =>
  attributeChart('u chart', counts, sizes, (rate, size) => Math.sqrt(rate / size));
