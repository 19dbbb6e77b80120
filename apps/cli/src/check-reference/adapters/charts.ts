import {
  chartConstants,
  cusum,
  cusumRunLength,
  ewma,
  ewmaRunLength,
  individualsChart,
  mannKendall,
  multirule,
  pettitt,
  rateChart,
  ruleRunLength,
  shareChart,
  subgroupCharts,
  type ControlRule,
} from '@archwright/screening';
import { fromOne, type Adapter } from '../adapter.js';

interface Series {
  readonly values: readonly number[];
}
interface Counts {
  readonly counts: readonly number[];
  readonly sizes: readonly number[];
}

export const charts: Readonly<Record<string, Adapter>> = {
  chartConstants: { run: ({ n }: { n: readonly number[] }) => n.map(chartConstants) },
  individualsMovingRange: {
    run: ({ values }: Series) => {
      const chart = individualsChart(values);
      return {
        mean: chart.mean,
        mrBar: chart.meanMovingRange,
        ucl: chart.upper,
        lcl: chart.lower,
        mrUcl: chart.movingRangeUpper,
        sigma: chart.sigma,
        outside: fromOne(chart.outside),
      };
    },
  },
  cusum: {
    run: ({ values, target, k, h }: Series & { target: number; k: number; h: number }) => {
      const { upper, lower, signals } = cusum(values, { target, k, h });
      let sum = 0;
      return {
        upper,
        lower,
        cumulativeDeviation: values.map((value) => (sum += value - target)),
        firstSignal: signals[0] === undefined ? null : signals[0] + 1,
        signals: fromOne(signals),
      };
    },
  },
  ewma: {
    run: ({
      values,
      target,
      sigma,
      lambda,
      L,
    }: Series & { target: number; sigma: number; lambda: number; L: number }) => {
      const chart = ewma(values, { target, sigma, lambda, width: L });
      const beyond = chart.averages.flatMap((average, at) =>
        average > chart.upperAsymptotic || average < chart.lowerAsymptotic ? [at] : [],
      );
      return {
        ewma: chart.averages,
        uclTimeVarying: chart.upper,
        lclTimeVarying: chart.lower,
        uclAsymptotic: chart.upperAsymptotic,
        lclAsymptotic: chart.lowerAsymptotic,
        signalsTimeVarying: fromOne(chart.signals),
        signalsAsymptotic: fromOne(beyond),
      };
    },
  },
  xbarRS: {
    run: ({ subgroups }: { subgroups: readonly (readonly number[])[] }) => {
      const chart = subgroupCharts(subgroups);
      return {
        grandMean: chart.grandMean,
        rBar: chart.meanRange,
        sBar: chart.meanDeviation,
        xbarLimitsFromR: chart.meanLimitsFromRange,
        rLimits: chart.rangeLimits,
        xbarLimitsFromS: chart.meanLimitsFromDeviation,
        sLimits: chart.deviationLimits,
        sigmaFromR: chart.sigmaFromRange,
        sigmaFromS: chart.sigmaFromDeviation,
      };
    },
  },
  pChart: {
    run: ({ counts, sizes }: Counts) => {
      const { centre, upper, lower, outside } = shareChart(counts, sizes);
      return { pBar: centre, ucl: upper, lcl: lower, outside: fromOne(outside) };
    },
  },
  uChart: {
    run: ({ counts, sizes }: Counts) => {
      const { centre, upper, lower, outside } = rateChart(counts, sizes);
      return { uBar: centre, ucl: upper, lcl: lower, outside: fromOne(outside) };
    },
  },
  multirule: {
    run: ({ z }: { z: readonly number[] }) => {
      const { rulesAtEachPoint, firstRejection } = multirule(z);
      return { rulesAtEachPoint, firstRejection: firstRejection === null ? null : firstRejection + 1 };
    },
  },
  mannKendallSen: {
    run: ({ values }: Series) => {
      const trend = mannKendall(values);
      return {
        S: trend.statistic,
        varianceWithTies: trend.variance,
        Z: trend.z,
        p: trend.p,
        senSlope: trend.senSlope,
        senIntercept: trend.senIntercept,
        senCi95: trend.slopeInterval,
      };
    },
  },
  pettitt: {
    run: ({ values }: Series) => {
      const { lastBefore, statistic, p } = pettitt(values);
      return { changeAfterIndex: lastBefore + 1, K: statistic, pApprox: p };
    },
  },
  cusumArl: {
    run: ({ k, h, shifts }: { k: number; h: number; shifts: readonly number[] }) => ({
      arl: shifts.map((shift) => cusumRunLength(k, h, shift)),
    }),
  },
  ewmaArl: {
    run: ({ cases, shifts }: { cases: readonly { lambda: number; L: number }[]; shifts: readonly number[] }) => ({
      arl: cases.map(({ lambda, L }) => shifts.map((shift) => ewmaRunLength(lambda, L, shift))),
    }),
  },
  rulesArl: {
    run: ({ ruleSets }: { ruleSets: readonly (readonly ControlRule[])[] }) => ({
      arl: ruleSets.map((rules) => ({
        inControl: ruleRunLength(rules, 0),
        shiftOneSigma: ruleRunLength(rules, 1),
      })),
    }),
  },
};
