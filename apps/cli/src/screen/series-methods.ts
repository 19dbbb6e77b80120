import {
  CLASSICAL_RULES,
  cusum,
  cusumRunLength,
  ewma,
  ewmaRunLength,
  individualsChart,
  mannKendall,
  multirule,
  requirePositive,
  ruleRunLength,
  theilSen,
} from '@archwright/screening';
import { first, rowsOf, second, type MethodData, type MethodOption, type ScreenMethod } from './method.js';

const TARGET: MethodOption = { name: 'target', meaning: 'value that the series should keep' };
const SIGMA: MethodOption = { name: 'sigma', meaning: 'standard deviation of a single value in control' };
const FROM_SERIES = 'when left out, taken from the series itself as in the individuals chart';
const LEARNT_TARGET: MethodOption = { ...TARGET, meaning: `${TARGET.meaning}; ${FROM_SERIES}` };
const LEARNT_SIGMA: MethodOption = { ...SIGMA, meaning: `${SIGMA.meaning}; ${FROM_SERIES}` };
const SIGNAL_ROWS = 'rows that signal, from 1 below the header';
const FALSE_ALARM_LENGTH =
  'average run length: values to a false alarm, target and sigma taken for known; null beyond a thousand million';

/** A series judged by its own mean hides a level that was wrong from the start: only what is given counts as known. */
function levelOf(data: MethodData): { readonly target: number; readonly sigma: number } {
  const [target, sigma] = [data.optional('target'), data.optional('sigma')];
  if (target !== null && sigma !== null) return { target, sigma };
  const own = individualsChart(first(data));
  return { target: target ?? own.mean, sigma: sigma ?? own.sigma };
}

/** Beyond it the equations behind a run length no longer hold their digits. */
const LONGEST = 1e9;
const WIDEST_SIGMAS = 6;
const orNull = (length: number): number | null => (length > 0 && length <= LONGEST ? length : null);

/** Charts and trends of values in the order in which they were taken. */
export const SERIES_METHODS: Readonly<Record<string, ScreenMethod>> = {
  'individuals-chart': {
    does: 'single values with limits from the moving range of two',
    columns: 'one',
    options: [],
    answers: {
      mean: 'centre line',
      meanMovingRange: 'mean distance of a value from the one before',
      sigma: 'standard deviation from the moving range',
      upper: 'upper limit, three standard deviations above the mean',
      lower: 'lower limit',
      movingRangeUpper: 'limit of the moving range',
      signalRows: SIGNAL_ROWS,
      movingRangeRows: 'rows whose distance from the row before exceeds its limit',
    },
    run: (data) => {
      const { outside, movingRangeOutside, ...rest } = individualsChart(first(data));
      return { ...rest, signalRows: rowsOf(outside), movingRangeRows: rowsOf(movingRangeOutside) };
    },
  },
  ewma: {
    does: 'exponentially weighted moving average, for small lasting shifts',
    columns: 'one',
    options: [
      LEARNT_TARGET,
      LEARNT_SIGMA,
      { name: 'lambda', meaning: 'weight of the newest value, above 0, at most 1', byDefault: 0.2 },
      { name: 'width', meaning: 'width of the limits in standard deviations of the average', byDefault: 3 },
    ],
    answers: {
      target: 'as given or taken from the series',
      sigma: 'as given or taken from the series',
      averages: 'average at each row',
      upper: 'upper limits, which widen from the first value on',
      lower: 'lower limits',
      upperAsymptotic: 'what the upper limits widen to',
      lowerAsymptotic: 'what the lower limits widen to',
      signalRows: SIGNAL_ROWS,
      falseAlarmLength: `${FALSE_ALARM_LENGTH}, limits at their widest`,
    },
    run: (data) => {
      const level = levelOf(data);
      const [lambda, width] = [data.option('lambda'), data.option('width')];
      const { signals, ...rest } = ewma(first(data), { ...level, lambda, width });
      const length = width > WIDEST_SIGMAS ? null : orNull(ewmaRunLength(lambda, width, 0));
      return { ...level, ...rest, signalRows: rowsOf(signals), falseAlarmLength: length };
    },
  },
  cusum: {
    does: 'cumulative sum, for a lasting shift of the mean',
    columns: 'one',
    options: [
      LEARNT_TARGET,
      LEARNT_SIGMA,
      {
        name: 'k',
        meaning: 'allowance in the values’ unit, usually half the shift to be found; half a sigma when left out',
      },
      { name: 'h', meaning: 'decision interval in the values’ unit, usually 4 to 5 sigma; 5 sigma when left out' },
    ],
    answers: {
      target: 'as given or taken from the series',
      sigma: 'as given or taken from the series; null when target, k and h leave it unused',
      k: 'allowance',
      h: 'decision interval',
      upper: 'upper sum at each row',
      lower: 'lower sum at each row',
      signalRows: SIGNAL_ROWS,
      falseAlarmLength: `${FALSE_ALARM_LENGTH}, or without sigma`,
    },
    run: (data) => {
      const [given, k, h] = [data.optional('target'), data.optional('k'), data.optional('h')];
      const isDesigned = given !== null && k !== null && h !== null;
      const { target, sigma } =
        isDesigned && data.optional('sigma') === null ? { target: given, sigma: null } : levelOf(data);
      const design = { target, k: k ?? 0.5 * (sigma ?? 0), h: h ?? 5 * (sigma ?? 0) };
      const { upper, lower, signals } = cusum(first(data), design);
      const isComputable = sigma !== null && sigma > 0 && design.h / sigma <= WIDEST_SIGMAS * 5;
      const length = isComputable ? orNull(cusumRunLength(design.k / sigma, design.h / sigma, 0)) : null;
      return { ...design, sigma, upper, lower, signalRows: rowsOf(signals), falseAlarmLength: length };
    },
  },
  multirule: {
    does: 'control rules 1-2s (warning), 1-3s, 2-2s, R-4s, 4-1s, 10-x on standardised values',
    columns: 'one',
    options: [
      { ...TARGET, byDefault: 0 },
      { ...SIGMA, byDefault: 1 },
    ],
    answers: {
      rules: 'rules completed at each row',
      firstRejectionRow: 'first row that breaks a rule other than the warning; null for none',
      falseAlarmLength: FALSE_ALARM_LENGTH,
    },
    run: (data) => {
      const { rulesAtEachPoint, firstRejection } = multirule(standardised(data));
      return {
        rules: rulesAtEachPoint,
        firstRejectionRow: firstRejection === null ? null : firstRejection + 1,
        falseAlarmLength: ruleRunLength(CLASSICAL_RULES, 0),
      };
    },
  },
  'theil-sen': {
    does: 'slope as the median of all pairwise slopes, with the test for a trend where one column stands against its row',
    columns: 'one-or-two',
    options: [{ name: 'level', meaning: 'of the interval, above 0 and below 1', byDefault: 0.95 }],
    answers: {
      slope: 'per row, or per unit of x',
      intercept: 'median of y - slope x; before the first row, x is 0',
      interval: 'interval of the slope; null for two columns',
      p: 'two-sided probability without a trend, Mann-Kendall; null for two columns',
    },
    run: (data) => {
      const level = data.option('level');
      if (data.columns.length === 2) return { ...theilSen(first(data), second(data)), interval: null, p: null };
      const trend = mannKendall(first(data), level);
      return { slope: trend.senSlope, intercept: trend.senIntercept, interval: trend.slopeInterval, p: trend.p };
    },
  },
};

function standardised(data: MethodData): number[] {
  const [target, sigma] = [data.option('target'), data.option('sigma')];
  requirePositive('Multirule', 'sigma', sigma);
  return first(data).map((value) => (value - target) / sigma);
}
