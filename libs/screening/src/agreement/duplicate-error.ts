import tCdf from '@stdlib/stats-base-dists-t-cdf';
import { mean } from 'simple-statistics';
import { NoSpreadError } from '../errors.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';
import { differencesOf, requirePairs } from '../sample/sample.js';

export interface DuplicateError {
  readonly n: number;
  /** √(Σd² / 2n): includes a bias between first and second reading. */
  readonly dahlberg: number;
  /** Mean of first minus second. */
  readonly bias: number;
  readonly biasT: number;
  /** Two-sided. */
  readonly biasP: number;
  /** Standard deviation of the differences over √2: without the bias. */
  readonly randomError: number;
  /** 1.96 √2 within-subject standard deviations: 95 % of repeats differ by less. */
  readonly repeatability: number;
}

/**
 * Error of a reading from duplicates.
 *
 * @throws {NoSpreadError} when all differences are equal
 * @see Dahlberg (1940), Statistical Methods for Medical and Biological Students; Bland & Altman (1996), Measurement
 *   error, BMJ 313:744
 */
export function duplicateError(first: readonly number[], second: readonly number[]): DuplicateError {
  requirePairs('Duplicate error', first, second, 2);
  const differences = differencesOf(first, second);
  const { n, mean: bias, sd } = meanAndSpread(differences);
  const meanSquare = mean(differences.map((difference) => difference * difference));
  if (meanSquare === 0)
    throw new NoSpreadError('Duplicate error', 'All duplicates are equal: the resolution hides the error.');
  if (sd === 0)
    throw new NoSpreadError(
      'Duplicate error',
      `Every second reading differs by ${String(-bias)}: that is a bias alone, or the same reading written twice.`,
    );
  const biasT = bias / (sd / Math.sqrt(n));
  return {
    n,
    dahlberg: Math.sqrt(meanSquare / 2),
    bias,
    biasT,
    biasP: 2 * tCdf(-Math.abs(biasT), n - 1),
    randomError: sd / Math.SQRT2,
    repeatability: 1.96 * Math.sqrt(meanSquare),
  };
}
