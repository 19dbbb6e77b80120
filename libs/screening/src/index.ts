export { type BlandAltman, blandAltman } from './agreement/bland-altman.js';
export { type DuplicateError, duplicateError } from './agreement/duplicate-error.js';
export { type IntraclassCorrelation, intraclassCorrelation } from './agreement/intraclass-correlation.js';
export { type Repeatability, repeatability } from './agreement/repeatability.js';
export { type AttributeChart, shareChart, rateChart } from './charts/attribute-charts.js';
export { type ChartConstants, chartConstants } from './charts/chart-constants.js';
export { type CusumDesign, type Cusum, cusum } from './charts/cusum.js';
export { type EwmaDesign, type Ewma, ewma } from './charts/ewma.js';
export { type IndividualsChart, individualsChart } from './charts/individuals-chart.js';
export { type ControlRule, type Multirule, CLASSICAL_RULES, multirule } from './charts/multirule.js';
export { ruleRunLength } from './charts/rule-run-length.js';
export { cusumRunLength, ewmaRunLength } from './charts/run-length.js';
export { type SubgroupCharts, subgroupCharts } from './charts/subgroup-charts.js';
export {
  normalQuantile,
  tQuantile,
  chiSquareQuantile,
  fQuantile,
  betaQuantile,
  gammaQuantile,
  lognormalQuantile,
} from './distribution/quantiles.js';
export {
  TooFewValuesError,
  TooManyValuesError,
  NotANumberError,
  NoSpreadError,
  OptionError,
  UnequalLengthsError,
} from './errors.js';
export { huberLocation, bisquareLocation, huberProposal2, trimmedMean } from './location/m-location.js';
export { qnScale, snScale, tauScale } from './location/robust-scale.js';
export { type HotellingTest, hotelling } from './multivariate/hotelling.js';
export { type MahalanobisDistances, mahalanobis } from './multivariate/mahalanobis.js';
export { type RobustDistances, minimumCovarianceDeterminant } from './multivariate/minimum-covariance-determinant.js';
export { type BoxplotFences, boxplotFences } from './outliers/boxplot-fences.js';
export { type EsdTest, generalizedEsd } from './outliers/generalized-esd.js';
export { type GrubbsTest, grubbs } from './outliers/grubbs.js';
export { type HampelFilter, hampelFilter } from './outliers/hampel-filter.js';
export {
  type RobustScale,
  type ModifiedZ,
  MODIFIED_Z_CUT,
  modifiedZ,
  largestPossibleZ,
} from './outliers/modified-z.js';
export { type TietjenMooreTest, tietjenMoore } from './outliers/tietjen-moore.js';
export { type FunnelUnit, type Funnel, funnel } from './rates/funnel.js';
export { type ProportionIntervals, proportionInterval } from './rates/proportion-interval.js';
export { meanAndSpread } from './sample/mean-and-spread.js';
export { MAD_TO_SD, medianAndDeviation } from './sample/median-deviation.js';
export { requirePositive } from './sample/sample.js';
export { type QuantileType, sorted, quantileOfSorted } from './sample/quantile.js';
export { LEARNED, screenSeries, type Drift, type SeriesOutcome, type SeriesSettings } from './screen/screen-series.js';
export { screenRise, type RiseOutcome, type RiseQuestion } from './screen/screen-rise.js';
export { MOST_SETS, screenSet, type SetOutcome } from './screen/screen-set.js';
export { screenShares, type ShareOutcome, type UnitCount } from './screen/screen-shares.js';
export {
  screenValue,
  type ComparedValue,
  type Comparison,
  type TooFewOthers,
  type ValueOutcome,
  type ValueSettings,
} from './screen/screen-value.js';
export { type ShrunkMeans, shrinkMeans } from './shrinkage/shrink-means.js';
export { type MannKendallTrend, mannKendall } from './trend/mann-kendall.js';
export { type TheilSenLine, theilSen } from './trend/pairwise-slopes.js';
export { type PettittTest, pettitt } from './trend/pettitt.js';
