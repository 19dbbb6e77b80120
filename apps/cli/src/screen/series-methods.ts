import { cusum, ewma, individualsChart, mannKendall, multirule, theilSen } from '@archwright/screening';
import { first, rowsOf, second, type MethodOption, type ScreenMethod } from './method.js';

const TARGET: MethodOption = { name: 'target', meaning: 'value that the series should keep' };
const SIGMA: MethodOption = { name: 'sigma', meaning: 'standard deviation of a single value in control' };
const SIGNAL_ROWS = 'rows that signal, from 1 below the header';

/** Charts and trends of values in the order in which they were taken. */
export const SERIES_METHODS: Readonly<Record<string, ScreenMethod>> = {
  'individuals-chart': {
    does: 'single values with limits from the moving range of two',
    columns: 'one',
    options: [],
    answers: {
      mean: 'centre line',
      upper: 'upper limit',
      lower: 'lower limit',
      sigma: 'standard deviation from the moving range',
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
      TARGET,
      SIGMA,
      { name: 'lambda', meaning: 'weight of the newest value, above 0, at most 1', byDefault: 0.2 },
      { name: 'width', meaning: 'width of the limits in standard deviations of the average', byDefault: 3 },
    ],
    answers: { averages: 'average at each row', upper: 'upper limits', lower: 'lower limits', signalRows: SIGNAL_ROWS },
    run: (data) => {
      const { signals, ...rest } = ewma(first(data), {
        target: data.option('target'),
        sigma: data.option('sigma'),
        lambda: data.option('lambda'),
        width: data.option('width'),
      });
      return { ...rest, signalRows: rowsOf(signals) };
    },
  },
  cusum: {
    does: 'cumulative sum, for a lasting shift of the mean',
    columns: 'one',
    options: [
      TARGET,
      { name: 'k', meaning: 'allowance in the values’ unit, usually half the shift to be found' },
      { name: 'h', meaning: 'decision interval in the values’ unit, usually 4 to 5 standard deviations' },
    ],
    answers: { upper: 'upper sum at each row', lower: 'lower sum at each row', signalRows: SIGNAL_ROWS },
    run: (data) => {
      const design = { target: data.option('target'), k: data.option('k'), h: data.option('h') };
      const { upper, lower, signals } = cusum(first(data), design);
      return { upper, lower, signalRows: rowsOf(signals) };
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
    },
    run: (data) => {
      const [target, sigma] = [data.option('target'), data.option('sigma')];
      const { rulesAtEachPoint, firstRejection } = multirule(first(data).map((value) => (value - target) / sigma));
      return { rules: rulesAtEachPoint, firstRejectionRow: firstRejection === null ? null : firstRejection + 1 };
    },
  },
  'theil-sen': {
    does: 'slope as the median of all pairwise slopes, with the test for a trend where one column stands against its row',
    columns: 'one-or-two',
    options: [],
    answers: {
      slope: 'per row, or per unit of x',
      intercept: 'median of y - slope x; before the first row, x is 0',
      interval: '95 % interval of the slope (one column)',
      p: 'probability without a trend, Mann-Kendall (one column)',
    },
    run: (data) => {
      if (data.columns.length === 2) return { ...theilSen(first(data), second(data)) };
      const trend = mannKendall(first(data));
      return { slope: trend.senSlope, intercept: trend.senIntercept, interval: trend.slopeInterval, p: trend.p };
    },
  },
};
