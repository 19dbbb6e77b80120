import { blandAltman, duplicateError, intraclassCorrelation, repeatability } from '@archwright/screening';
import { asRows, first, second, type MethodOption, type ScreenMethod } from './method.js';

const LEVEL: MethodOption = { name: 'level', meaning: 'of the intervals, above 0 and below 1', byDefault: 0.95 };

/** How well repeated readings, or different readers, agree. */
export const AGREEMENT_METHODS: Readonly<Record<string, ScreenMethod>> = {
  'bland-altman': {
    does: 'limits of agreement between two readings of the same subjects (Bland & Altman 1986)',
    columns: 'two',
    options: [LEVEL],
    answers: {
      n: 'pairs',
      meanDifference: 'first minus second',
      sdDifference: 'standard deviation of the differences',
      seMean: 'standard error of the mean difference',
      meanInterval: 'interval of the mean difference',
      limits: 'mean difference ± 1.96 standard deviations',
      seLimit: 'standard error of a limit by the paper’s approximation, √(3 s² / n)',
      seLimitExact: 'the same without the paper’s rounding',
      lowerLimitInterval: 'interval of the lower limit',
      upperLimitInterval: 'interval of the upper limit',
      pearson: 'correlation of the two; null where one does not vary',
      concordance: 'concordance correlation (Lin 1989)',
      correlationWithMean: 'of the difference with the mean of the two; far from 0: compare logarithms instead',
    },
    run: (data) => ({ ...blandAltman(first(data), second(data), data.option('level')) }),
  },
  'duplicate-error': {
    does: 'error of a reading from duplicates (Dahlberg 1940)',
    columns: 'two',
    options: [],
    answers: {
      n: 'pairs',
      dahlberg: 'error with the bias between the two',
      bias: 'mean of first minus second',
      biasT: 'bias in its standard errors (paired t)',
      biasP: 'two-sided probability without a bias',
      randomError: 'error without the bias',
      repeatability: '95 % of repeats differ by less',
    },
    run: (data) => ({ ...duplicateError(first(data), second(data)) }),
  },
  icc: {
    does: 'intraclass correlations; a row per target, a column per judge (Shrout & Fleiss 1979)',
    columns: 'several',
    options: [LEVEL],
    answers: {
      meanSquares: 'between targets, within targets, between judges, residual',
      single: 'of one rating: oneWay (1,1), twoWayRandom (2,1), twoWayFixed (3,1), each with its interval',
      average: 'of the mean of all ratings: (1,k), (2,k), (3,k)',
    },
    run: (data) => ({ ...intraclassCorrelation(asRows(data), data.option('level')) }),
  },
  repeatability: {
    does: 'repeatability and reproducibility of readings in groups: a column of values, one of groups (ISO 5725-2)',
    columns: 'values-and-groups',
    options: [],
    answers: {
      mean: 'of all readings',
      sdOfGroupMeans: 'standard deviation of the groups’ means',
      withinSd: 'repeatability standard deviation',
      betweenSd: 'between groups, cut at zero',
      reproducibilitySd: 'of single readings from different groups',
      repeatabilityLimit: '2.8 times: 95 % of pairs from one group differ by less',
      reproducibilityLimit: 'the same of pairs from different groups',
      h: 'Mandel’s h of each group',
      k: 'Mandel’s k of each group',
      cochranC: 'largest variance over the sum of all',
      groups: 'the groups in the order of h and k',
    },
    run: (data) => {
      const byGroup = new Map<string, number[]>();
      data.groups.forEach((group, at) => {
        const own = byGroup.get(group) ?? [];
        own.push(first(data)[at] ?? Number.NaN);
        byGroup.set(group, own);
      });
      return { ...repeatability([...byGroup.values()]), groups: [...byGroup.keys()] };
    },
  },
};
