import {
  boxplotFences,
  generalizedEsd,
  grubbs,
  hampelFilter,
  mahalanobis,
  minimumCovarianceDeterminant,
  MODIFIED_Z_CUT,
  modifiedZ,
  OptionError,
  type QuantileType,
} from '@archwright/screening';
import { asRows, first, rowsOf, type MethodOption, type ScreenMethod } from './method.js';

const ALPHA: MethodOption = {
  name: 'alpha',
  meaning: 'probability of a false alarm, above 0 and below 1',
  byDefault: 0.05,
};
const RESOLUTION: MethodOption = {
  name: 'resolution',
  meaning: 'smallest step of the instrument, in the values’ unit',
};
const QUANTILE: MethodOption = {
  name: 'quantile',
  meaning: 'share of ordinary rows within the cut-off, by chi-square',
  byDefault: 0.975,
};
const OUTLIER_ROWS = 'rows found, from 1 below the header';

function quantileType(given: number): QuantileType {
  if (Number.isInteger(given) && given >= 1 && given <= 9) return given as QuantileType;
  throw new OptionError('Box-plot fences', 'quantile type', given, 'a whole number from 1 to 9');
}

/** Methods that find values, or rows, which stand out. */
export const OUTLIER_METHODS: Readonly<Record<string, ScreenMethod>> = {
  'generalized-esd': {
    does: 'up to a stated number of outliers in a normal sample, without masking (Rosner 1983)',
    columns: 'one',
    options: [{ name: 'max-outliers', meaning: 'most outliers looked for', byDefault: 3 }, ALPHA],
    answers: {
      statistics: 'statistic of each step',
      criticalValues: 'critical value of each step',
      numberOfOutliers: 'the largest step whose statistic exceeds its critical value',
      outlierRows: OUTLIER_ROWS,
      outlierValues: 'their values',
    },
    run: (data) => {
      const { steps, numberOfOutliers, outliers } = generalizedEsd(
        first(data),
        data.option('max-outliers'),
        data.option('alpha'),
      );
      return {
        statistics: steps.map(({ statistic }) => statistic),
        criticalValues: steps.map(({ critical }) => critical),
        numberOfOutliers,
        outlierRows: rowsOf(outliers.map(({ index }) => index)),
        outlierValues: outliers.map(({ value }) => value),
      };
    },
  },
  grubbs: {
    does: 'one outlier in a normal sample (Grubbs 1969)',
    columns: 'one',
    options: [ALPHA],
    answers: {
      mean: 'mean',
      sd: 'standard deviation',
      statistic: 'largest distance from the mean in standard deviations',
      criticalTwoSided: 'critical value, outlier on either side',
      criticalOneSided: 'critical value, outlier on a side chosen beforehand',
      pTwoSided: 'two-sided probability',
      outlierRows: OUTLIER_ROWS,
      outlierValues: 'their values',
    },
    run: (data) => {
      const test = grubbs(first(data), data.option('alpha'));
      const found = test.isOutlierTwoSided ? [test.extremeIndex] : [];
      return {
        mean: test.mean,
        sd: test.sd,
        statistic: test.statistic,
        criticalTwoSided: test.criticalTwoSided,
        criticalOneSided: test.criticalOneSided,
        pTwoSided: test.pTwoSided,
        outlierRows: rowsOf(found),
        outlierValues: found.map((at) => first(data)[at]),
      };
    },
  },
  'modified-z': {
    does: 'distance from the median in median absolute deviations (Iglewicz & Hoaglin 1993)',
    columns: 'one',
    options: [{ name: 'cut', meaning: 'score beyond which a value is found', byDefault: MODIFIED_Z_CUT }, RESOLUTION],
    answers: {
      median: 'median',
      mad: 'median absolute deviation, not scaled',
      scale: 'what the scores are measured in: the MAD, the mean absolute deviation, or the resolution',
      scores: 'score of each row',
      outlierRows: OUTLIER_ROWS,
    },
    run: (data) => {
      const resolution = data.optional('resolution');
      const found = modifiedZ(first(data), { cut: data.option('cut'), ...(resolution === null ? {} : { resolution }) });
      const { median, mad, scale, scores } = found;
      return { median, mad, scale, scores, outlierRows: rowsOf(found.outliers) };
    },
  },
  hampel: {
    does: 'values of a series that stand out of their neighbours (Hampel 1974)',
    columns: 'one',
    options: [
      { name: 'half-window', meaning: 'neighbours on each side', byDefault: 3 },
      { name: 'threshold', meaning: 'scaled median absolute deviations of the window', byDefault: 3 },
      { ...RESOLUTION, byDefault: 0 },
    ],
    answers: { outlierRows: OUTLIER_ROWS, filtered: 'the series, found values replaced by the median of their window' },
    run: (data) => {
      const { flagged, filtered } = hampelFilter(first(data), {
        halfWindow: data.option('half-window'),
        threshold: data.option('threshold'),
        resolution: data.option('resolution'),
      });
      return { outlierRows: rowsOf(flagged), filtered };
    },
  },
  boxplot: {
    does: 'fences at 1.5 and 3 interquartile ranges beyond the quartiles (Tukey 1977)',
    columns: 'one',
    options: [{ name: 'quantile-type', meaning: 'definition of the quartiles, 1 to 9 (Hyndman & Fan)', byDefault: 6 }],
    answers: {
      q1: 'lower quartile',
      median: 'median',
      q3: 'upper quartile',
      iqr: 'distance of the quartiles',
      inner: 'inner fences, low and high',
      outer: 'outer fences, low and high',
      mildRows: 'rows beyond an inner fence only',
      extremeRows: 'rows beyond an outer fence',
    },
    run: (data) => {
      const { mild, extreme, ...rest } = boxplotFences(first(data), quantileType(data.option('quantile-type')));
      return { ...rest, mildRows: rowsOf(mild), extremeRows: rowsOf(extreme) };
    },
  },
  mahalanobis: {
    does: 'distance of rows from the mean of several columns; groups of outliers mask one another here, see mcd',
    columns: 'several',
    options: [QUANTILE],
    answers: {
      centre: 'mean of each column',
      covariance: 'covariance, divisor n - 1',
      distances: 'of each row',
      cutoff: 'found beyond it',
      outlierRows: OUTLIER_ROWS,
    },
    run: (data) => {
      const { centre, covariance, distances, cutoff, outliers } = mahalanobis(asRows(data), data.option('quantile'));
      return { centre, covariance: covariance.to2DArray(), distances, cutoff, outlierRows: rowsOf(outliers) };
    },
  },
  mcd: {
    does: 'robust distances by the minimum covariance determinant, reweighted (Rousseeuw & Van Driessen 1999)',
    columns: 'several',
    options: [
      { name: 'share', meaning: 'share of the rows trusted, 0.5 to 1', byDefault: 0.5 },
      QUANTILE,
      { name: 'seed', meaning: 'of the random starts where subsets are too many to try all', byDefault: 1 },
    ],
    answers: {
      centre: 'robust centre',
      covariance: 'robust scatter',
      distances: 'of each row',
      cutoff: 'found beyond it',
      coreRows: 'the rows on which the estimate rests',
      outlierRows: OUTLIER_ROWS,
    },
    run: (data) => {
      const found = minimumCovarianceDeterminant(asRows(data), {
        share: data.option('share'),
        quantile: data.option('quantile'),
        seed: data.option('seed'),
      });
      return {
        centre: found.centre,
        covariance: found.covariance.to2DArray(),
        distances: found.distances,
        cutoff: found.cutoff,
        coreRows: rowsOf(found.best.subset),
        outlierRows: rowsOf(found.outliers),
      };
    },
  },
};
