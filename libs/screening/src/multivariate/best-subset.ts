import { type SeededRandom } from '@archwright/kernel';
import { determinant } from 'ml-matrix';
import { distancesFrom } from './mahalanobis.js';
import { centreAndScatter, factorOf } from './scatter.js';

type Rows = readonly (readonly number[])[];

export interface BestSubset {
  /** Positions, from 0, ascending. */
  readonly subset: readonly number[];
  readonly determinant: number;
}

/** Up to this many subsets are tried one by one; beyond, concentration from random starts. */
const MOST_SUBSETS = 400_000;
/** Random starts of two concentration steps each, and how many of them are followed to the end. */
const STARTS = 500;
const FOLLOWED = 10;
/** Of more rows the starts are made on so many, drawn at random; only what is followed looks at all of them. */
const NESTED = 1_500;

function numberOfSubsets(n: number, h: number): number {
  let count = 1;
  for (let i = 1; i <= h; i++) count = (count * (n - h + i)) / i;
  return count;
}

/** Determinant of a small symmetric positive matrix from packed sums, without allocating: the exhaustive search calls it for each subset. */
function scatterDeterminant(
  sums: Float64Array,
  products: Float64Array,
  width: number,
  n: number,
  work: Float64Array,
): number {
  for (let j = 0; j < width; j++) {
    for (let k = 0; k <= j; k++) {
      work[j * width + k] = (products[j * width + k]! - (sums[j]! * sums[k]!) / n) / (n - 1);
    }
  }
  let det = 1;
  for (let j = 0; j < width; j++) {
    let pivot = work[j * width + j]!;
    for (let k = 0; k < j; k++) pivot -= work[j * width + k]! ** 2;
    if (pivot <= 0) return 0;
    det *= pivot;
    const root = Math.sqrt(pivot);
    work[j * width + j] = root;
    for (let i = j + 1; i < width; i++) {
      let value = work[i * width + j]!;
      for (let k = 0; k < j; k++) value -= work[i * width + k]! * work[j * width + k]!;
      work[i * width + j] = value / root;
    }
  }
  return det;
}

/** Every subset, sums carried along so that a leaf costs only its determinant. */
function exhaustive(rows: Rows, h: number): readonly number[] {
  const n = rows.length;
  const width = rows[0]!.length;
  // Sums of squares about a point inside the data keep the digits that raw ones would cancel.
  const { centre } = centreAndScatter(rows);
  const centred = rows.map((row) => row.map((value, j) => value - centre[j]!));
  const sums = new Float64Array(width);
  const products = new Float64Array(width * width);
  const work = new Float64Array(width * width);
  const chosen: number[] = [];
  let best = Infinity;
  let bestSubset: readonly number[] = [];
  const add = (row: readonly number[], sign: number) => {
    for (let j = 0; j < width; j++) {
      sums[j]! += sign * row[j]!;
      for (let k = 0; k <= j; k++) products[j * width + k]! += sign * row[j]! * row[k]!;
    }
  };
  const extend = (from: number) => {
    if (chosen.length === h) {
      const det = scatterDeterminant(sums, products, width, h, work);
      if (det < best) {
        best = det;
        bestSubset = [...chosen];
      }
      return;
    }
    for (let at = from; at <= n - (h - chosen.length); at++) {
      chosen.push(at);
      add(centred[at]!, 1);
      extend(at + 1);
      add(centred[at]!, -1);
      chosen.pop();
    }
  };
  extend(0);
  return bestSubset;
}

/** The h rows nearest to the centre of a subset: their determinant is never larger than the subset's. */
function concentrate(rows: Rows, subset: readonly number[], h: number): number[] {
  const distances = distancesFrom('Minimum covariance determinant', rows, centreAndScatter(rows, subset));
  return rows
    .map((_, index) => index)
    .sort((a, b) => distances[a]! - distances[b]! || a - b)
    .slice(0, h)
    .sort((a, b) => a - b);
}

const determinantOf = (rows: Rows, subset: readonly number[]) => determinant(centreAndScatter(rows, subset).covariance);

function shuffled(rows: Rows, random: SeededRandom): number[] {
  const order = rows.map((_, index) => index);
  for (let i = order.length - 1; i > 0; i--) {
    const j = random.nextBelow(i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

function randomStart(rows: Rows, random: SeededRandom): number[] {
  const order = shuffled(rows, random);
  // width + 1 rows, and more while they lie in a plane.
  let size = rows[0]!.length + 1;
  const isFlat = () => factorOf(centreAndScatter(rows, order.slice(0, size)).covariance) === null;
  while (size < order.length && isFlat()) size++;
  return order.slice(0, size);
}

/** The most promising of the concentrations from random starts. */
function promising(rows: Rows, h: number, random: SeededRandom): readonly BestSubset[] {
  const candidates: BestSubset[] = [];
  for (let start = 0; start < STARTS; start++) {
    const subset = concentrate(rows, concentrate(rows, randomStart(rows, random), h), h);
    candidates.push({ subset, determinant: determinantOf(rows, subset) });
  }
  return candidates.sort((a, b) => a.determinant - b.determinant).slice(0, FOLLOWED);
}

/** Starts for all rows from those of some of them. */
function nestedStarts(rows: Rows, h: number, random: SeededRandom): readonly BestSubset[] {
  const drawn = shuffled(rows, random).slice(0, NESTED);
  const few = drawn.map((at) => rows[at]!);
  return promising(few, Math.round((h * NESTED) / rows.length), random).map(({ subset }) => {
    const start = concentrate(
      rows,
      subset.map((at) => drawn[at]!),
      h,
    );
    return { subset: start, determinant: determinantOf(rows, start) };
  });
}

/** Concentration from random starts, the most promising followed until nothing changes. */
function fromRandomStarts(rows: Rows, h: number, random: SeededRandom): readonly number[] {
  const candidates = rows.length > NESTED ? nestedStarts(rows, h, random) : promising(rows, h, random);
  let best = candidates[0]!;
  for (const candidate of candidates) {
    let current = candidate;
    for (;;) {
      const subset = concentrate(rows, current.subset, h);
      const next = { subset, determinant: determinantOf(rows, subset) };
      if (!(next.determinant < current.determinant)) break;
      current = next;
    }
    if (current.determinant < best.determinant) best = current;
  }
  return best.subset;
}

/**
 * The h rows whose covariance has the smallest determinant: proved best while few subsets exist, else by
 * concentration from seeded random starts.
 *
 * @see Rousseeuw & Van Driessen (1999), A fast algorithm for the minimum covariance determinant estimator,
 *   Technometrics 41:212-223
 */
export function bestSubset(rows: Rows, h: number, random: SeededRandom): BestSubset {
  const isSmall = numberOfSubsets(rows.length, h) <= MOST_SUBSETS;
  const subset = isSmall ? exhaustive(rows, h) : fromRandomStarts(rows, h, random);
  return { subset, determinant: determinantOf(rows, subset) };
}
