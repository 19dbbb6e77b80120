import type { ValueFigure } from '@archwright/contracts';
import { NoSpreadError, individualsChart } from '@archwright/screening';

/** Fewest cases before limits are drawn. Project default; text books ask for 20 to 25 (common practice, no source). */
export const FEWEST_CASES = 12;

export type CaseValue = Omit<ValueFigure['points'][number], 'isOutside'>;

/** Values case by case with limits from the difference of each to the one before. */
export function chartValues(cases: readonly CaseValue[]): Omit<ValueFigure, 'key' | 'unit'> {
  const values = cases.map(({ value }) => value);
  const bare = cases.map((each) => ({ ...each, isOutside: false }));
  const centre = values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
  const unlimited = { centre, lower: null, upper: null, points: bare };
  if (values.length < FEWEST_CASES) return { standing: { kind: 'too-few', needed: FEWEST_CASES }, ...unlimited };
  try {
    const { lower, upper, outside } = individualsChart(values);
    const points = bare.map((point, index) => ({ ...point, isOutside: outside.includes(index) }));
    // No case takes less than nothing.
    return { standing: { kind: 'charted' }, centre, lower: Math.max(0, lower), upper, points };
  } catch (error) {
    if (!(error instanceof NoSpreadError)) throw error;
    return { standing: { kind: 'no-spread' }, ...unlimited };
  }
}
