import fCdf from '@stdlib/stats-base-dists-f-cdf';
import { TooFewValuesError, UnequalLengthsError } from '../errors.js';
import { requireRows } from '../sample/sample.js';
import { distancesFrom } from './mahalanobis.js';
import { centreAndScatter, type CentreAndScatter } from './scatter.js';

export interface HotellingTest extends CentreAndScatter {
  readonly tSquared: number;
  readonly f: number;
  readonly p: number;
}

/**
 * Whether the mean of several quantities taken together can be the one given.
 *
 * @see Hotelling (1931), The generalization of Student's ratio, Annals of Mathematical Statistics 2:360-378
 */
export function hotelling(rows: readonly (readonly number[])[], mean: readonly number[]): HotellingTest {
  const width = requireRows('Hotelling', rows, 2);
  if (mean.length !== width) throw new UnequalLengthsError('Hotelling', width, mean.length);
  const n = rows.length;
  if (n <= width) throw new TooFewValuesError('Hotelling', n, width + 1, 'rows');
  const scatter = centreAndScatter(rows);
  const distance = distancesFrom('Hotelling', [mean], scatter)[0]!;
  const tSquared = n * distance ** 2;
  const f = ((n - width) / (width * (n - 1))) * tSquared;
  return { ...scatter, tSquared, f, p: f === 0 ? 1 : fCdf(1 / f, n - width, width) };
}
