import { seededRandom } from '@archwright/kernel';
import {
  bisquareLocation,
  boxplotFences,
  generalizedEsd,
  grubbs,
  hampelFilter,
  huberLocation,
  huberProposal2,
  largestPossibleZ,
  meanAndSpread,
  modifiedZ,
  medianAndDeviation,
  qnScale,
  quantileOfSorted,
  snScale,
  sorted,
  tauScale,
  tietjenMoore,
  trimmedMean,
  type QuantileType,
} from '@archwright/screening';
import { fromOne, type Adapter } from '../adapter.js';

interface Sample {
  readonly values: readonly number[];
}

const QUANTILE_TYPES: readonly QuantileType[] = [1, 2, 3, 4, 5, 6, 7, 8, 9];
/** Of the simulation behind Tietjen-Moore's critical value; any seed must come within the stated tolerance. */
const SIMULATION_SEED = 20_260_105;

export const outliers: Readonly<Record<string, Adapter>> = {
  grubbs: {
    run: ({ values, alpha }: Sample & { alpha: number }) => {
      const test = grubbs(values, alpha);
      return {
        mean: test.mean,
        sd: test.sd,
        extremeIndex: test.extremeIndex + 1,
        extremeValue: test.extremeValue,
        G: test.statistic,
        criticalOneSided: test.criticalOneSided,
        criticalTwoSided: test.criticalTwoSided,
        pTwoSidedBonferroni: test.pTwoSided,
        outlierOneSided: test.isOutlierOneSided,
        outlierTwoSided: test.isOutlierTwoSided,
      };
    },
  },
  tietjenMoore: {
    run: ({ values, k, alpha }: Sample & { k: number; alpha: number }) => {
      const test = tietjenMoore(values, k, { alpha, random: seededRandom(SIMULATION_SEED) });
      return {
        E: test.statistic,
        criticalSimulated: test.critical,
        outliers: test.areOutliers ? fromOne(test.suspects) : [],
      };
    },
    tolerances: { criticalSimulated: 0.005 },
  },
  gesd: {
    run: ({ values, maxOutliers, alpha }: Sample & { maxOutliers: number; alpha: number }) => {
      const test = generalizedEsd(values, maxOutliers, alpha);
      return {
        R: test.steps.map(({ statistic }) => statistic),
        lambda: test.steps.map(({ critical }) => critical),
        numberOfOutliers: test.numberOfOutliers,
        outlierValues: test.outliers.map(({ value }) => value),
      };
    },
  },
  boxplotFences: {
    run: ({ values, quantile }: Sample & { quantile: string }) => {
      const type = Number(/type (\d)/.exec(quantile)?.[1]) as QuantileType;
      const { inner, outer, mild, extreme, ...quartiles } = boxplotFences(values, type);
      const valuesAt = (positions: readonly number[]) => positions.map((at) => values[at]);
      return {
        ...quartiles,
        innerLow: inner[0],
        innerHigh: inner[1],
        outerLow: outer[0],
        outerHigh: outer[1],
        mild: valuesAt(mild),
        extreme: valuesAt(extreme),
      };
    },
  },
  quantileTypes: {
    run: ({ values, p }: Sample & { p: number }) =>
      Object.fromEntries(
        QUANTILE_TYPES.map((type) => [`type${String(type)}`, quantileOfSorted(sorted(values), p, type)]),
      ),
  },
  modifiedZ: {
    run: ({ values, cut }: Sample & { cut: number }) => {
      const { median, mad, madScaled, scores, outliers: found } = modifiedZ(values, { cut });
      const { mean, sd } = meanAndSpread(values);
      return {
        median,
        mad,
        madScaled,
        modifiedZ: scores,
        outlierIndices: fromOne(found),
        zScore: values.map((value) => (value - mean) / sd),
        maxPossibleZ: largestPossibleZ(values.length),
      };
    },
  },
  hampelFilter: {
    run: ({ values, halfWindow, threshold }: Sample & { halfWindow: number; threshold: number }) => {
      const { flagged, filtered } = hampelFilter(values, { halfWindow, threshold });
      return { flagged: fromOne(flagged), filtered };
    },
  },
  mLocation: {
    run: ({ values }: Sample) => {
      const { mean, sd } = meanAndSpread(values);
      const proposal = huberProposal2(values);
      const tau = tauScale(values);
      return {
        mean,
        sd,
        median: medianAndDeviation(values).median,
        madScaled: modifiedZ(values).madScaled,
        trimmedMean10: trimmedMean(values, 0.1),
        'huberK1.5_fixedMad': huberLocation(values),
        huberProposal2: { mu: proposal.location, s: proposal.scale },
        'bisquare4.685_fixedMad': bisquareLocation(values),
        Qn_finiteCorrected: qnScale(values),
        Sn_finiteCorrected: snScale(values),
        tau: tau.location,
        tauScale: tau.scale,
      };
    },
  },
};
