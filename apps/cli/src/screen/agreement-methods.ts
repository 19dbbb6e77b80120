import { blandAltman, duplicateError, intraclassCorrelation, repeatability } from '@archwright/screening';
import { asRows, first, second, type ScreenMethod } from './method.js';

/** How well repeated readings, or different readers, agree. */
export const AGREEMENT_METHODS: Readonly<Record<string, ScreenMethod>> = {
  'bland-altman': {
    does: 'limits of agreement between two readings of the same subjects (Bland & Altman 1986)',
    columns: 'two',
    options: [],
    answers: {
      meanDifference: 'first minus second',
      sdDifference: 'standard deviation of the differences',
      limits: 'mean difference ± 1.96 standard deviations',
      meanInterval: '95 % interval of the mean difference',
      correlationWithMean: 'far from 0: compare logarithms instead',
    },
    run: (data) => ({ ...blandAltman(first(data), second(data)) }),
  },
  'duplicate-error': {
    does: 'error of a reading from duplicates (Dahlberg 1940)',
    columns: 'two',
    options: [],
    answers: {
      dahlberg: 'error with the bias between the two',
      bias: 'mean of first minus second',
      biasP: 'two-sided probability without a bias',
      randomError: 'error without the bias',
      repeatability: '95 % of repeats differ by less',
    },
    run: (data) => ({ ...duplicateError(first(data), second(data)) }),
  },
  icc: {
    does: 'intraclass correlations; a row per target, a column per judge (Shrout & Fleiss 1979)',
    columns: 'several',
    options: [],
    answers: {
      meanSquares: 'between targets, within targets, between judges, residual',
      single: 'of one rating: one-way, two-way random, two-way fixed, each with its 95 % interval',
      average: 'of the mean of all ratings',
    },
    run: (data) => ({ ...intraclassCorrelation(asRows(data)) }),
  },
  repeatability: {
    does: 'repeatability and reproducibility of readings in groups: a column of values, one of groups (ISO 5725-2)',
    columns: 'values-and-groups',
    options: [],
    answers: {
      withinSd: 'repeatability standard deviation',
      betweenSd: 'between groups',
      reproducibilitySd: 'of single readings from different groups',
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
