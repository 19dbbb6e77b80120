import { TracingError } from '../errors.js';
import { toDegrees } from '../point.js';

/** Covariance of two coordinates, divisor n - 1. */
export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

export interface Ellipse {
  /** What the eigenvalues are multiplied by before the root. */
  readonly factor: number;
  readonly semiMajor: number;
  readonly semiMinor: number;
  readonly area: number;
}

export interface Ellipses {
  readonly eigenvalues: readonly [larger: number, smaller: number];
  /** Of the major axis from the x axis, in (-90, 90]. */
  readonly axisDeg: number;
  /** Region for the mean (small sample, Hotelling). */
  readonly ofMean: Ellipse;
  /** Region for the next point (small sample). */
  readonly ofNext: Ellipse;
  /** Region holding the level's share of the points, as if the covariance were known. */
  readonly ofPoints: Ellipse;
}

/** Below this many points the region of the mean is so wide that it says nothing (factor 266 at three). */
export const FEWEST_FOR_ELLIPSE = 4;

/**
 * Quantiles for two coordinates, from their exact distribution functions: 1 - (1 + 2x/d)^(-d/2) of Fisher's F with 2 and d
 * degrees of freedom, 1 - exp(-x/2) of chi-square with 2. In the browser a general library would want code made from
 * text, which the content security policy refuses.
 */
const fQuantileOfTwo = (p: number, d: number): number => (d / 2) * ((1 - p) ** (-2 / d) - 1);
const chiSquareQuantileOfTwo = (p: number): number => -2 * Math.log(1 - p);

/**
 * Ellipses of a two-dimensional normal sample.
 *
 * @param n points behind the covariance
 * @throws {TracingError} `tracing.too-few-points` below four points
 * @see Johnson & Wichern, Applied Multivariate Statistical Analysis, 5.4; Hotelling (1931)
 */
export function ellipses({ xx, xy, yy }: Covariance, n: number, level = 0.95): Ellipses {
  if (n < FEWEST_FOR_ELLIPSE) {
    const message = `Ellipse: ${String(n)} points given, at least ${String(FEWEST_FOR_ELLIPSE)} are needed.`;
    throw new TracingError('too-few-points', message, { given: n, needed: FEWEST_FOR_ELLIPSE });
  }
  const middle = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xy);
  const eigenvalues = [middle + half, Math.max(0, middle - half)] as const;
  const f = fQuantileOfTwo(level, n - 2);
  const ellipse = (factor: number): Ellipse => {
    const [semiMajor, semiMinor] = [Math.sqrt(eigenvalues[0] * factor), Math.sqrt(eigenvalues[1] * factor)];
    return { factor, semiMajor, semiMinor, area: Math.PI * semiMajor * semiMinor };
  };
  return {
    eigenvalues,
    axisDeg: toDegrees(Math.atan2(2 * xy, xx - yy) / 2),
    ofMean: ellipse(((2 * (n - 1)) / (n * (n - 2))) * f),
    ofNext: ellipse(((2 * (n - 1) * (n + 1)) / (n * (n - 2))) * f),
    ofPoints: ellipse(chiSquareQuantileOfTwo(level)),
  };
}
