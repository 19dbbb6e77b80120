import { ewmaRunLength } from '../charts/run-length.js';
import { requireBetween, requireWhole } from '../sample/sample.js';

export interface EwmaWish {
  readonly lambda: number;
  /** Average run length wished for: values to a false alarm, over many series. */
  readonly valuesPerAlarm: number;
  /** How many values target and spread are learned from. */
  readonly learned: number;
}

type NormalNodes = readonly (readonly [at: number, weight: number])[];
/** For the mean of a function of a standard normal variable: Gauss-Hermite, five nodes (Abramowitz & Stegun, table 25.10, scaled). */
const NORMAL_NODES: NormalNodes = [
  [-2.85697001387281, 0.0112574113277207],
  [-1.35562617997427, 0.222075922005613],
  [0, 0.533333333333333],
  [1.35562617997427, 0.222075922005613],
  [2.85697001387281, 0.0112574113277207],
];
/** A target learned too high costs as much as one too low: half of the nodes, with the weight of both. */
const EITHER_SIDE: NormalNodes = NORMAL_NODES.filter(([at]) => at >= 0).map(([at, weight]) => [
  at,
  at === 0 ? weight : 2 * weight,
]);
/** What Qn tells of a spread, beside the standard deviation (Rousseeuw & Croux 1993). */
const QN_EFFICIENCY = 0.82;
const NARROWEST = 0.5;
const WIDEST = 6;
const EXACT_TO = 1e-3;
/** Of the run lengths behind a width: half as many as for a run length by itself change no width in its third decimal. */
const NODES = 32;

const known = new Map<string, number>();

/**
 * Width of an EWMA chart's limits that gives the wished average run length when target and spread are not known but
 * were learned: a median and a Qn of few values are themselves uncertain, and the false alarms of an unlucky baseline
 * outnumber what a lucky one saves. Found by false position on the logarithm of the alarm rate, which is nearly a straight
 * line of the width, from {@link ewmaRunLength} averaged over both errors.
 *
 * @returns width in standard deviations of the average
 * @see Jones, Champ & Rigdon (2001), The performance of exponentially weighted moving average charts with estimated
 *   parameters, Technometrics 43:156-167 (the effect); Lucas & Saccucci (1990), Technometrics 32:1-12 (the chart)
 */
export function ewmaWidth({ lambda, valuesPerAlarm, learned }: EwmaWish): number {
  requireBetween('EWMA width', 'values to a false alarm', valuesPerAlarm, 10, 1e5);
  requireWhole('EWMA width', 'learned values', learned, 20, Number.MAX_SAFE_INTEGER);
  const key = [lambda, valuesPerAlarm, learned].join(' ');
  const before = known.get(key);
  if (before !== undefined) return before;
  const width = search((at) => Math.log(alarmRate(lambda, at, learned) * valuesPerAlarm));
  known.set(key, width);
  return width;
}

/** Where a falling function crosses zero, by false position; an end that stays twice loses half its say (Illinois). */
function search(excess: (width: number) => number): number {
  let [low, high] = [NARROWEST, WIDEST];
  let [above, below] = [excess(low), excess(high)];
  let width = high;
  while (high - low > EXACT_TO) {
    const before = width;
    width = low + ((high - low) * above) / (above - below);
    const now = excess(width);
    if (now > 0) {
      if (before === low) below /= 2;
      [low, above] = [width, now];
    } else {
      if (before === high) above /= 2;
      [high, below] = [width, now];
    }
    if (Math.abs(now) < EXACT_TO) break;
  }
  return width;
}

/** False alarms per value, over all the targets and spreads that might have been learned from a steady series. */
function alarmRate(lambda: number, width: number, learned: number): number {
  const targetError = Math.sqrt(Math.PI / (2 * learned));
  const logSpreadError = Math.sqrt(1 / (2 * QN_EFFICIENCY * learned));
  let rate = 0;
  for (const [shift, shiftWeight] of EITHER_SIDE) {
    for (const [log, logWeight] of NORMAL_NODES) {
      const seenWidth = width * Math.exp(log * logSpreadError);
      rate += (shiftWeight * logWeight) / ewmaRunLength(lambda, seenWidth, shift * targetError, NODES);
    }
  }
  return rate;
}
