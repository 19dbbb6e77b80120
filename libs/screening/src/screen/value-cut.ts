import { tQuantile } from '../distribution/quantiles.js';
import { requireBetween, requireWhole } from '../sample/sample.js';

/** Below it the cut grows past any use: 5.4 spreads at 20 others, 9.2 at 10, 1000 values to a false alarm. */
export const FEWEST_OTHERS = 10;

/** What the median absolute deviation tells of a spread, beside the standard deviation (Rousseeuw & Croux 1993). */
const MAD_EFFICIENCY = 0.37;
/** The deviation comes out too small in small samples, by about this share of one value (Croux & Rousseeuw 1992, from memory). */
const MAD_SHORTFALL = 0.8;

/**
 * How many robust spreads from the median of its group an ordinary value may lie: wider for a small group, whose
 * median and spread are themselves uncertain. A prediction interval of Student's form with the degrees of freedom that
 * the median absolute deviation is worth. By simulation of normal values the false alarms are 0.75 to 1.1 times the
 * setting, from 10 others to 1000 and from 200 values to a false alarm to 1000.
 *
 * @param others size of the comparison group
 * @param valuesPerAlarm average run length: of so many ordinary values one stands out by chance
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 7.1.4 (form); the degrees of freedom are ours
 */
export function valueCut(others: number, valuesPerAlarm: number): number {
  requireWhole('Value cut', 'size of the group', others, FEWEST_OTHERS, Number.MAX_SAFE_INTEGER);
  requireBetween('Value cut', 'values to a false alarm', valuesPerAlarm, 1, 1e9);
  const worth = 1 + MAD_EFFICIENCY * (others - 1);
  const uncertainMedian = Math.sqrt(1 + Math.PI / (2 * others));
  return tQuantile(1 - 1 / (2 * valuesPerAlarm), worth) * uncertainMedian * (others / (others - MAD_SHORTFALL));
}
