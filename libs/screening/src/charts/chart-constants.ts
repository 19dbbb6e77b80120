import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { gaussLegendre } from '../distribution/gauss-legendre.js';
import { requireWhole } from '../sample/sample.js';

/** Factors for control charts of subgroups of size n; the letters are the standard's. */
export interface ChartConstants {
  readonly n: number;
  readonly d2: number;
  readonly d3: number;
  readonly c4: number;
  readonly A: number;
  readonly A2: number;
  readonly A3: number;
  readonly B3: number;
  readonly B4: number;
  readonly B5: number;
  readonly B6: number;
  readonly D1: number;
  readonly D2: number;
  readonly D3: number;
  readonly D4: number;
}

/** Beyond 8 standard deviations nothing of a normal variable is left in double precision. */
const REACH = 8;
const NODES = 96;
const KNOWN = new Map<number, ChartConstants>();
const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);

/** Mean and standard deviation of the range R of n standard normal values: E R = ∫ P(R > r) dr, E R² = ∫ 2 r P(R > r) dr. */
function rangeMoments(n: number): { d2: number; d3: number } {
  const lowest = gaussLegendre(-REACH, REACH, NODES);
  const isWiderThan = (r: number) =>
    1 -
    lowest.reduce(
      (sum, { at, weight }) =>
        sum + weight * n * density(at) * (normalCdf(at + r, 0, 1) - normalCdf(at, 0, 1)) ** (n - 1),
      0,
    );
  let first = 0;
  let second = 0;
  for (const { at: r, weight } of gaussLegendre(0, 2 * REACH, NODES)) {
    const probability = isWiderThan(r);
    first += weight * probability;
    second += weight * 2 * r * probability;
  }
  return { d2: first, d3: Math.sqrt(second - first * first) };
}

/** Mean of the standard deviation of n standard normal values: √(2/(n-1)) Γ(n/2) / Γ((n-1)/2). */
function deviationMean(n: number): number {
  // Γ(m/2) / Γ((m-1)/2) by its own recurrence from m = 2, where it is 1/√π.
  let ratio = 1 / Math.sqrt(Math.PI);
  for (let m = 3; m <= n; m++) ratio = (m - 2) / 2 / ratio;
  return Math.sqrt(2 / (n - 1)) * ratio;
}

/**
 * @param n subgroup size, 2 to 25
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.1; ASTM Manual 7, table of factors
 */
export function chartConstants(n: number): ChartConstants {
  requireWhole('Chart constants', 'subgroup size', n, 2, 25);
  const known = KNOWN.get(n);
  if (known !== undefined) return known;
  const { d2, d3 } = rangeMoments(n);
  const c4 = deviationMean(n);
  const s = 3 * Math.sqrt(1 - c4 * c4);
  const constants: ChartConstants = {
    n,
    d2,
    d3,
    c4,
    A: 3 / Math.sqrt(n),
    A2: 3 / (d2 * Math.sqrt(n)),
    A3: 3 / (c4 * Math.sqrt(n)),
    B3: Math.max(0, 1 - s / c4),
    B4: 1 + s / c4,
    B5: Math.max(0, c4 - s),
    B6: c4 + s,
    D1: Math.max(0, d2 - 3 * d3),
    D2: d2 + 3 * d3,
    D3: Math.max(0, 1 - (3 * d3) / d2),
    D4: 1 + (3 * d3) / d2,
  };
  KNOWN.set(n, constants);
  return constants;
}
