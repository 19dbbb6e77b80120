import {
  hotelling,
  mahalanobis,
  MAD_TO_SD,
  medianAndDeviation,
  minimumCovarianceDeterminant,
  theilSen,
} from '@archwright/screening';
import {
  consensusLine,
  ellipses,
  geometricCircle,
  geometricMedian,
  huberLine,
  kasaCircle,
  leastMedianLine,
  leastTrimmedLine,
  mmLine,
  ordinaryLeastSquares,
  prattCircle,
  repeatedMedianLine,
  rmsFrom,
  taubinCircle,
  toSlopeLine,
  totalLeastSquares,
  yorkLine,
  type Circle,
  type Line,
  type Point,
} from '@archwright/tracing';
import { fromOne, type Adapter } from '../adapter.js';

interface Columns {
  readonly x: readonly number[];
  readonly y: readonly number[];
}
interface Rows {
  readonly rows: readonly (readonly number[])[];
}
type Pair = readonly [number, number];

const pointsOf = ({ x, y }: Columns): Point[] => x.map((value, index) => ({ x: value, y: y[index] ?? Number.NaN }));
const pairOf = ({ x, y }: Point): Pair => [x, y];
const fromCircle = ({ centre, radius }: Circle) => ({ cx: centre.x, cy: centre.y, r: radius });
const withRms = (line: Line, points: readonly Point[]) => ({
  ...toSlopeLine(line),
  rmsOrthogonal: rmsFrom(line, points),
});

export const geometry: Readonly<Record<string, Adapter>> = {
  mahalanobis: {
    run: ({ rows }: Rows) => {
      const found = mahalanobis(rows);
      return {
        center: found.centre,
        cov: found.covariance.to2DArray(),
        distance: found.distances,
        cutoff975: found.cutoff,
        flagged: fromOne(found.outliers),
      };
    },
  },
  mcdExact: {
    run: ({ rows }: Rows) => {
      const { best } = minimumCovarianceDeterminant(rows);
      const kept = mahalanobis(best.subset.map((at) => rows[at] ?? []));
      return {
        h: best.subset.length,
        bestSubset: fromOne(best.subset),
        det: best.determinant,
        center: kept.centre,
        cov: kept.covariance.to2DArray(),
      };
    },
  },
  mcdReweighted: {
    run: ({ rows, alpha }: Rows & { alpha: number }) => {
      const found = minimumCovarianceDeterminant(rows, { share: alpha });
      return {
        h: found.best.subset.length,
        bestSubset: fromOne(found.best.subset),
        detBest: found.best.determinant,
        rawCenter: mahalanobis(found.best.subset.map((at) => rows[at] ?? [])).centre,
        reweightedCenter: found.centre,
        reweightedCov: found.covariance.to2DArray(),
        distance: found.distances,
        flagged975: fromOne(found.outliers),
      };
    },
  },
  hotelling: {
    run: ({ rows, mu }: Rows & { mu: readonly number[] }) => {
      const found = hotelling(rows, mu);
      return { mean: found.centre, cov: found.covariance.to2DArray(), T2: found.tSquared, F: found.f, p: found.p };
    },
  },
  ellipse: {
    run: ({ cov, n, level }: { cov: readonly [Pair, Pair]; n: number; level: number }) => {
      const found = ellipses({ xx: cov[0][0], xy: cov[0][1], yy: cov[1][1] }, n, level);
      const region = ({ factor, ...rest }: (typeof found)['ofMean']) => ({ c: factor, ...rest });
      return {
        eigenvalues: found.eigenvalues,
        majorAxisAngleDeg: found.axisDeg,
        confidenceOfMean: region(found.ofMean),
        predictionNext: region(found.ofNext),
        chiSquareData: region(found.ofPoints),
      };
    },
  },
  totalLeastSquares: {
    run: (columns: Columns) => {
      const points = pointsOf(columns);
      return { ols: ordinaryLeastSquares(points), totalLeastSquares: withRms(totalLeastSquares(points), points) };
    },
  },
  yorkLine: {
    run: ({ x, y, weightX, weightY }: Columns & { weightX: readonly number[]; weightY: readonly number[] }) =>
      yorkLine(
        pointsOf({ x, y }).map((point, index) => ({
          ...point,
          weightX: weightX[index] ?? Number.NaN,
          weightY: weightY[index] ?? Number.NaN,
        })),
      ),
  },
  robustLine: {
    run: ({ threshold, ...columns }: Columns & { threshold: number }) => {
      const points = pointsOf(columns);
      const median = theilSen(columns.x, columns.y);
      const medians = { x: medianAndDeviation(columns.x).median, y: medianAndDeviation(columns.y).median };
      const repeated = repeatedMedianLine(points);
      const { inliers, line } = consensusLine(points, threshold);
      const trimmed = leastTrimmedLine(points);
      // The case's program standardises y by its scaled median absolute deviation first.
      const scaleOfY = MAD_TO_SD * medianAndDeviation(columns.y).mad;
      return {
        ols: ordinaryLeastSquares(points),
        totalLeastSquares: withRms(totalLeastSquares(points), points),
        theilSen: {
          slope: median.slope,
          interceptMedianResidual: median.intercept,
          interceptMedians: medians.y - median.slope * medians.x,
        },
        repeatedMedian: { slope: repeated.slope, interceptMedianResidual: repeated.intercept },
        lms: leastMedianLine(points),
        ltsRaw: { ...trimmed, objective: trimmed.objective / scaleOfY ** 2 },
        huberM: huberLine(points),
        mmBisquare: mmLine(points),
        consensus: {
          threshold,
          maxConsensusOverPairs: inliers.length,
          inliers: fromOne(inliers),
          refit: withRms(
            line,
            inliers.flatMap((at) => points[at] ?? []),
          ),
        },
      };
    },
    tolerances: { mmBisquare: 1e-3 },
  },
  circleFit: {
    run: (columns: Columns) => {
      const points = pointsOf(columns);
      const { sumSquares, ...geometric } = geometricCircle(points);
      return {
        all: fromCircle(geometric),
        kasa: fromCircle(kasaCircle(points)),
        pratt: fromCircle(prattCircle(points)),
        taubin: fromCircle(taubinCircle(points)),
        geometric: { ...fromCircle(geometric), sumSquares },
      };
    },
  },
  geometricMedian: {
    run: ({ points }: { points: readonly Pair[] }) => {
      const found = geometricMedian(points.map(([x, y]) => ({ x, y })));
      return {
        point: pairOf(found.point),
        sumOfDistances: found.sumOfDistances,
        atDataPoint: found.atDataPoint === null ? null : found.atDataPoint + 1,
      };
    },
  },
};
