import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { Matrix, solve } from 'ml-matrix';
import { gaussLegendre, type Node } from '../distribution/gauss-legendre.js';
import { requireBetween } from '../sample/sample.js';

const NODES = 64;
const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Mean run length of one cumulative sum that starts at zero, for values of mean `shift` and standard deviation 1. */
function oneSidedCusumRunLength(k: number, h: number, shift: number): number {
  const nodes = gaussLegendre(0, h, NODES);
  // Unknowns: the run length from zero, where the sum rests with positive probability, then from each node.
  const starts = [0, ...nodes.map(({ at }) => at)];
  const system = Matrix.eye(starts.length);
  starts.forEach((start, row) => {
    const drift = start - k + shift;
    system.set(row, 0, system.get(row, 0) - normalCdf(-drift, 0, 1));
    nodes.forEach(({ at, weight }, index) => {
      system.set(row, index + 1, system.get(row, index + 1) - weight * density(at - drift));
    });
  });
  return solve(system, Matrix.ones(starts.length, 1)).get(0, 0);
}

/**
 * Average run length of a two-sided cumulative sum: how many values pass, on average, before it signals.
 *
 * @param k allowance in standard deviations
 * @param h decision interval in standard deviations
 * @param shift of the mean in standard deviations; 0 gives the false-alarm distance
 * @see Page (1954), Biometrika 41:100-115 (integral equation); Brook & Evans (1972), Biometrika 59:539-549 (figures)
 */
export function cusumRunLength(k: number, h: number, shift: number): number {
  requireBetween('Cusum run length', 'h', h, 0, 50);
  return 1 / (1 / oneSidedCusumRunLength(k, h, shift) + 1 / oneSidedCusumRunLength(k, h, -shift));
}

/**
 * Average run length of an EWMA chart with its asymptotic limits.
 *
 * @param lambda weight of the newest value
 * @param width of the limits in standard deviations of the average
 * @param shift of the mean in standard deviations
 * @param nodes of the integral equation; the cost grows with their cube
 * @see Crowder (1987), A simple method for studying run-length distributions of EWMA charts, Technometrics 29:401-407;
 *   Lucas & Saccucci (1990), Technometrics 32:1-12 (figures)
 */
export function ewmaRunLength(lambda: number, width: number, shift: number, nodes = NODES): number {
  // A weight of 1 is the chart of single values.
  requireBetween('EWMA run length', 'lambda', lambda, 0, 1 + Number.EPSILON);
  requireBetween('EWMA run length', 'width', width, 0, 10);
  const limit = width * Math.sqrt(lambda / (2 - lambda));
  const places = gaussLegendre(-limit, limit, nodes);
  const kernel = (from: number, { at, weight }: Node) =>
    (weight / lambda) * density((at - (1 - lambda) * from) / lambda - shift);
  const system = Matrix.eye(nodes);
  places.forEach(({ at: from }, row) => {
    places.forEach((node, column) => {
      system.set(row, column, system.get(row, column) - kernel(from, node));
    });
  });
  const lengths = solve(system, Matrix.ones(nodes, 1)).getColumn(0);
  return 1 + places.reduce((sum, node, index) => sum + kernel(0, node) * lengths[index]!, 0);
}
