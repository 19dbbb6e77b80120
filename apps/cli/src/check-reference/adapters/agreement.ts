import { blandAltman, duplicateError, intraclassCorrelation, repeatability } from '@archwright/screening';
import type { Adapter } from '../adapter.js';

interface Reading {
  readonly y: number;
  readonly m: string;
  readonly lab: number;
}

/** Groups in the order in which their keys appear. */
function groupBy<Item, Key>(items: readonly Item[], keyOf: (item: Item) => Key): Map<Key, Item[]> {
  const groups = new Map<Key, Item[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}

/** Readings of one level, laboratory by laboratory, in the order in which laboratories appear. */
const byLaboratory = (rows: readonly Reading[]): number[][] =>
  [...groupBy(rows, ({ lab }) => lab).values()].map((readings) => readings.map(({ y }) => y));

export const agreement: Readonly<Record<string, Adapter>> = {
  blandAltman: {
    run: ({ a, b }: { a: readonly number[]; b: readonly number[] }) => {
      const found = blandAltman(a, b);
      const { meanDifference, sdDifference, n } = found;
      return {
        n,
        meanDifference,
        sdDifference,
        seMean: found.seMean,
        meanCi95: found.meanInterval,
        'limits1.96': found.limits,
        limits2: [meanDifference - 2 * sdDifference, meanDifference + 2 * sdDifference],
        seLimitApprox: found.seLimit,
        seLimitExactVariance: found.seLimitExact,
        lowerLimitCi95: found.lowerLimitInterval,
        upperLimitCi95: found.upperLimitInterval,
        pearson: found.pearson,
        linConcordance: found.concordance,
        correlationDifferenceMean: found.correlationWithMean,
      };
    },
  },
  duplicateError: {
    run: ({ first, second }: { first: readonly number[]; second: readonly number[] }) => {
      const found = duplicateError(first, second);
      return {
        dahlberg: found.dahlberg,
        withinSubjectSd: found.dahlberg,
        systematicT: found.biasT,
        systematicP: found.biasP,
        sdDifferenceAboutZero: found.dahlberg * Math.SQRT2,
        repeatabilityCoefficient2: 2 * found.dahlberg * Math.SQRT2,
        'repeatability1.96': found.repeatability,
        bias: found.bias,
        randomErrorSd: found.randomError,
      };
    },
  },
  icc: {
    run: ({ table }: { table: readonly (readonly number[])[] }) => {
      const { meanSquares, single, average } = intraclassCorrelation(table);
      return {
        BMS: meanSquares.between,
        WMS: meanSquares.within,
        JMS: meanSquares.judges,
        EMS: meanSquares.residual,
        icc11: single.oneWay.value,
        icc21: single.twoWayRandom.value,
        icc31: single.twoWayFixed.value,
        icc1k: average.oneWay.value,
        icc2k: average.twoWayRandom.value,
        icc3k: average.twoWayFixed.value,
        ci95: {
          icc11: single.oneWay.interval,
          icc21: single.twoWayRandom.interval,
          icc31: single.twoWayFixed.interval,
          icc1k: average.oneWay.interval,
          icc2k: average.twoWayRandom.interval,
          icc3k: average.twoWayFixed.interval,
        },
      };
    },
    tolerances: { ci95: 1e-4 },
  },
  repeatabilityReproducibility: {
    run: ({ rows }: { rows: readonly Reading[] }) =>
      [...groupBy(rows, ({ m }) => m)].map(([level, readings]) => {
        const found = repeatability(byLaboratory(readings));
        return {
          level,
          labs: found.groups,
          mean: found.mean,
          sdCellMeans: found.sdOfGroupMeans,
          sr: found.withinSd,
          sL: found.betweenSd,
          sR: found.reproducibilitySd,
          r: found.repeatabilityLimit,
          R: found.reproducibilityLimit,
          mandelH: found.h,
          mandelK: found.k,
          cochranC: found.cochranC,
          grubbsHigh: Math.max(...found.h),
          grubbsLow: -Math.min(...found.h),
        };
      }),
  },
};
