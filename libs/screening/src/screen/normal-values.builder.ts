import { seededRandom } from '@archwright/kernel';
import { normalQuantile } from '../distribution/quantiles.js';

/** Normal values of mean 0 and standard deviation 1, the same for the same seed and stream. */
export function normalValues(count: number, seed: number, stream = 0): number[] {
  const random = seededRandom(seed, stream);
  return Array.from({ length: count }, () => normalQuantile((random.nextUint32() + 0.5) / 0x1_0000_0000));
}
