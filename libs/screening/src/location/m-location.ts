import { MAD_TO_SD, medianAndDeviation } from '../sample/median-deviation.js';
import { NoSpreadError } from '../errors.js';
import { requireSample } from '../sample/sample.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

const CONVERGED = 1e-12;
const MOST_ROUNDS = 500;

/** Weight of a residual in robust standard deviations. */
type Weight = (residual: number) => number;
const huberWeight =
  (k: number): Weight =>
  (residual) =>
    Math.abs(residual) <= k ? 1 : k / Math.abs(residual);
const bisquareWeight =
  (c: number): Weight =>
  (residual) =>
    Math.abs(residual) >= c ? 0 : (1 - (residual / c) ** 2) ** 2;

function weightedLocation(method: string, values: readonly number[], weight: Weight): number {
  requireSample(method, values, 3);
  const { median, mad } = medianAndDeviation(values);
  if (mad === 0) throw new NoSpreadError(method, 'Over half of the values are equal: use the median.');
  const scale = mad * MAD_TO_SD;
  let location = median;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let weights = 0;
    let sum = 0;
    for (const value of values) {
      const w = weight((value - location) / scale);
      weights += w;
      sum += w * value;
    }
    const next = sum / weights;
    if (Math.abs(next - location) <= CONVERGED * scale) return next;
    location = next;
  }
  return location;
}

/**
 * Huber's M-estimate of location, scale fixed at the scaled median absolute deviation.
 *
 * @see Huber (1981), Robust Statistics; Venables & Ripley (2002), Modern Applied Statistics with S, 5.5
 */
export const huberLocation = (values: readonly number[], k = 1.5): number =>
  weightedLocation('Huber location', values, huberWeight(k));

/** Tukey's bisquare M-estimate of location, scale fixed at the scaled median absolute deviation. */
export const bisquareLocation = (values: readonly number[], c = 4.685): number =>
  weightedLocation('Bisquare location', values, bisquareWeight(c));

/**
 * Huber's Proposal 2: location and scale solved together, divisor n - 1.
 *
 * @see Huber (1981), Robust Statistics; Venables & Ripley (2002), Modern Applied Statistics with S, 5.5
 */
export function huberProposal2(values: readonly number[], k = 1.5): { location: number; scale: number } {
  requireSample('Huber Proposal 2', values, 3);
  const start = medianAndDeviation(values);
  if (start.mad === 0)
    throw new NoSpreadError('Huber Proposal 2', 'Over half of the values are equal: use the median.');
  const inside = 2 * normalCdf(k, 0, 1) - 1;
  const density = Math.exp((-k * k) / 2) / Math.sqrt(2 * Math.PI);
  const consistency = inside + k * k * (1 - inside) - 2 * k * density;
  let location = start.median;
  let scale = start.mad * MAD_TO_SD;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const drawnIn = values.map((value) => Math.min(Math.max(value, location - k * scale), location + k * scale));
    const next = drawnIn.reduce((sum, value) => sum + value, 0) / values.length;
    const squares = drawnIn.reduce((sum, value) => sum + (value - next) ** 2, 0);
    const nextScale = Math.sqrt(squares / (values.length - 1) / consistency);
    const isDone = Math.abs(next - location) < CONVERGED * scale && Math.abs(nextScale - scale) < CONVERGED * scale;
    location = next;
    scale = nextScale;
    if (isDone) break;
  }
  return { location, scale };
}

/** Mean without the given share of the values at each end. */
export function trimmedMean(values: readonly number[], share: number): number {
  requireSample('Trimmed mean', values, 3);
  const cut = Math.floor(values.length * share);
  const kept = [...values].sort((a, b) => a - b).slice(cut, values.length - cut);
  return meanAndSpread(kept).mean;
}
