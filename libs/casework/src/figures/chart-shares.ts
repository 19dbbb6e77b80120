import type { ShareFigure } from '@archwright/contracts';
import { funnel, shareChart } from '@archwright/screening';

/** Fewest months with cases before limits are drawn. Project default: with fewer they say more about the few than about the practice. */
export const FEWEST_MONTHS = 8;
/** Probability beyond three standard deviations on one side of a normal distribution: the usual false alarm of a chart. */
const TAIL = 0.00135;

export interface MonthCount {
  readonly monthOn: string;
  readonly events: number;
  readonly size: number;
}

/** Shares month by month with limits about the share of all of them. Months without cases are left out. */
export function chartShares(months: readonly MonthCount[]): Omit<ShareFigure, 'key'> {
  const counted = months.filter(({ size }) => size > 0);
  const events = counted.map((month) => month.events);
  const sizes = counted.map(({ size }) => size);
  const total = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0);
  const centre = counted.length === 0 ? null : total(events) / total(sizes);
  const bare = counted.map((month) => ({ ...month, lower: null, upper: null, isOutside: false }));
  if (counted.length < FEWEST_MONTHS)
    return { standing: { kind: 'too-few', needed: FEWEST_MONTHS }, centre, points: bare };
  if (centre === 0 || centre === 1) return { standing: { kind: 'no-spread' }, centre, points: bare };
  const { lower, upper } = shareChart(events, sizes);
  const { units } = funnel(events, sizes);
  const points = bare.map((point, index) => {
    const unit = units[index];
    const tail = unit === undefined ? 1 : Math.min(unit.exactLowerTail, unit.exactUpperTail);
    return { ...point, lower: lower[index] ?? null, upper: Math.min(1, upper[index] ?? 1), isOutside: tail < TAIL };
  });
  return { standing: { kind: 'charted' }, centre, points };
}
