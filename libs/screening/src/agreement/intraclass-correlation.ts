import { fQuantile } from '../distribution/quantiles.js';
import { NoSpreadError, TooFewValuesError } from '../errors.js';
import { requireBetween, requireRows } from '../sample/sample.js';

type Interval = readonly [low: number, high: number];
interface Estimate {
  readonly value: number;
  readonly interval: Interval;
}

/** The six forms: model 1, 2 or 3; a single rating, or the mean of all k. */
export interface IntraclassCorrelation {
  /** Mean squares between targets, within targets, between judges, and residual. */
  readonly meanSquares: {
    readonly between: number;
    readonly within: number;
    readonly judges: number;
    readonly residual: number;
  };
  readonly single: { readonly oneWay: Estimate; readonly twoWayRandom: Estimate; readonly twoWayFixed: Estimate };
  readonly average: { readonly oneWay: Estimate; readonly twoWayRandom: Estimate; readonly twoWayFixed: Estimate };
}

/** The residual is what is left of two sums: below this share of them it is rounding. */
const ROUNDING = 1e-10;

function meanSquares(table: readonly (readonly number[])[], k: number) {
  const n = table.length;
  const average = (of: readonly number[]) => of.reduce((sum, value) => sum + value, 0) / of.length;
  const rows = table.map(average);
  const columns = Array.from({ length: k }, (_, judge) => average(table.map((row) => row[judge]!)));
  const grand = average(rows);
  const squares = (of: readonly number[], about: number) => of.reduce((sum, value) => sum + (value - about) ** 2, 0);
  const betweenSum = k * squares(rows, grand);
  const judgeSum = n * squares(columns, grand);
  const withinSum = table.reduce((sum, row, index) => sum + squares(row, rows[index]!), 0);
  return {
    between: betweenSum / (n - 1),
    within: withinSum / (n * (k - 1)),
    judges: judgeSum / (k - 1),
    residual: (withinSum - judgeSum) / ((n - 1) * (k - 1)),
  };
}

/**
 * Intraclass correlations of `n` targets rated by the same `k` judges (rows are targets).
 *
 * @throws {NoSpreadError} when no target differs from another, or every judge agrees to the digit
 * @see Shrout & Fleiss (1979), Intraclass correlations: uses in assessing rater reliability, Psychological Bulletin
 *   86:420-428
 */
export function intraclassCorrelation(table: readonly (readonly number[])[], level = 0.95): IntraclassCorrelation {
  const k = requireRows('Intraclass correlation', table, 2);
  if (k < 2) throw new TooFewValuesError('Intraclass correlation', k, 2, 'ratings per target');
  requireBetween('Intraclass correlation', 'level', level, 0, 1);
  const n = table.length;
  const squares = meanSquares(table, k);
  const { between: b, within: w, judges: j, residual: e } = squares;
  if (b === 0 || !table.some((row) => row.some((value, at) => value !== table[0]![at])))
    throw new NoSpreadError('Intraclass correlation', 'No target differs from another.');
  if (e <= ROUNDING * w || w === 0)
    throw new NoSpreadError('Intraclass correlation', 'The judges agree to the digit, but for a constant shift.');
  const tail = (1 + level) / 2;

  const ratioInterval = (ratio: number, numerator: number, denominator: number): Interval => [
    ratio / fQuantile(tail, numerator, denominator),
    ratio * fQuantile(tail, denominator, numerator),
  ];
  const fromRatio = (value: number, bounds: Interval): Estimate => ({
    value,
    interval: bounds.map((f) => (f - 1) / (f + k - 1)) as unknown as Interval,
  });
  const ofMean = (value: number, bounds: Interval): Estimate => ({
    value,
    interval: bounds.map((f) => 1 - 1 / f) as unknown as Interval,
  });
  const oneWayBounds = ratioInterval(b / w, n - 1, n * (k - 1));
  const fixedBounds = ratioInterval(b / e, n - 1, (n - 1) * (k - 1));

  const random = (b - e) / (b + (k - 1) * e + (k * (j - e)) / n);
  const randomInterval = twoWayRandomInterval({ n, k, b, j, e, icc: random, tail });
  const stepUp = (icc: number) => (icc * k) / (1 + icc * (k - 1));
  return {
    meanSquares: squares,
    single: {
      oneWay: fromRatio((b - w) / (b + (k - 1) * w), oneWayBounds),
      twoWayRandom: { value: random, interval: randomInterval },
      twoWayFixed: fromRatio((b - e) / (b + (k - 1) * e), fixedBounds),
    },
    average: {
      oneWay: ofMean((b - w) / b, oneWayBounds),
      twoWayRandom: {
        value: (b - e) / (b + (j - e) / n),
        interval: [stepUp(randomInterval[0]), stepUp(randomInterval[1])],
      },
      twoWayFixed: ofMean((b - e) / b, fixedBounds),
    },
  };
}

/** Interval of the two-way random form, by Satterthwaite's degrees of freedom as the paper gives them. */
function twoWayRandomInterval(of: {
  readonly n: number;
  readonly k: number;
  readonly b: number;
  readonly j: number;
  readonly e: number;
  readonly icc: number;
  readonly tail: number;
}): Interval {
  const { n, k, b, j, e, icc, tail } = of;
  const judgeRatio = k * icc * (j / e);
  const rest = n * (1 + (k - 1) * icc) - k * icc;
  const freedom = ((k - 1) * (n - 1) * (judgeRatio + rest) ** 2) / ((n - 1) * judgeRatio ** 2 + rest ** 2);
  const above = fQuantile(tail, n - 1, freedom);
  const below = fQuantile(tail, freedom, n - 1);
  const spread = k * j + (k * n - k - n) * e;
  return [(n * (b - above * e)) / (above * spread + n * b), (n * (below * b - e)) / (spread + n * below * b)];
}
