import erfcinv from '@stdlib/math-base-special-erfcinv';
import betaQuantileOf from '@stdlib/stats-base-dists-beta-quantile';
import chiSquareQuantileOf from '@stdlib/stats-base-dists-chisquare-quantile';
import fQuantileOf from '@stdlib/stats-base-dists-f-quantile';
import gammaQuantileOf from '@stdlib/stats-base-dists-gamma-quantile';
import lognormalQuantileOf from '@stdlib/stats-base-dists-lognormal-quantile';
import tQuantileOf from '@stdlib/stats-base-dists-t-quantile';

/** Standard normal quantile, through the complementary error function: the library's own loses digits in the far tail. */
export const normalQuantile = (p: number): number => -Math.SQRT2 * erfcinv(2 * p);
/** Student's t. */
export const tQuantile = (p: number, degreesOfFreedom: number): number => tQuantileOf(p, degreesOfFreedom);
export const chiSquareQuantile = (p: number, degreesOfFreedom: number): number =>
  chiSquareQuantileOf(p, degreesOfFreedom);
/** Fisher's F. */
export const fQuantile = (p: number, numerator: number, denominator: number): number =>
  fQuantileOf(p, numerator, denominator);
export const betaQuantile = (p: number, a: number, b: number): number => betaQuantileOf(p, a, b);
export const gammaQuantile = (p: number, shape: number, rate: number): number => gammaQuantileOf(p, shape, rate);
export const lognormalQuantile = (p: number, mu: number, sigma: number): number => lognormalQuantileOf(p, mu, sigma);
