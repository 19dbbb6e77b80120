import { requireBetween } from '../sample/sample.js';
import { funnel } from '../rates/funnel.js';
import { shrinkMeans } from '../shrinkage/shrink-means.js';

/** How often something happened among the cases of one unit. */
export interface UnitCount {
  readonly unit: string;
  readonly events: number;
  readonly size: number;
}

export type ShareOutcome =
  /** Its cases are too few, or there is no other unit of sufficient size. */
  | {
      readonly outcome: 'too-few';
      readonly unit: string;
      readonly size: number;
      readonly needed: number;
      readonly units: number;
    }
  | {
      readonly outcome: 'fine' | 'stands-out';
      readonly unit: string;
      readonly events: number;
      readonly size: number;
      /** How many units were compared, this one included. */
      readonly units: number;
      /** Share over all units. */
      readonly centre: number;
      /** The unit's share drawn toward the overall one, the more the fewer its cases. */
      readonly shrunk: number;
      /** Probability of as many events or more at the overall share. */
      readonly tail: number;
    };

/** Below it an exact tail can hardly be small. Project default. */
export const FEWEST_CASES = 20;

/**
 * Shares of units of different size, each beside the overall share: a unit stands out when it has more events than
 * chance explains. With one unit of sufficient size there is nothing to compare.
 *
 * @param unitsPerAlarm of so many ordinary units at most one stands out by chance
 * @see Spiegelhalter (2005), Statistics in Medicine 24:1185-1202; {@link shrinkMeans}
 */
export function screenShares(counts: readonly UnitCount[], unitsPerAlarm: number): ShareOutcome[] {
  requireBetween('Shares', 'units to a false alarm', unitsPerAlarm, 1, 1e9);
  const large = counts.filter(({ size }) => size >= FEWEST_CASES);
  const units = large.length;
  const compared = units < 2 ? new Map<UnitCount, Compared>() : compare(large);
  return counts.map((count): ShareOutcome => {
    const { unit, size } = count;
    const found = compared.get(count);
    if (found === undefined) return { outcome: 'too-few', unit, size, needed: FEWEST_CASES, units };
    return { ...count, ...found, outcome: found.tail < 1 / unitsPerAlarm ? 'stands-out' : 'fine', units };
  });
}

interface Compared {
  readonly centre: number;
  readonly shrunk: number;
  readonly tail: number;
}

function compare(large: readonly UnitCount[]): Map<UnitCount, Compared> {
  const events = large.map((count) => count.events);
  const sizes = large.map(({ size }) => size);
  // None, or all: the units do not differ.
  if (events.every((n) => n === 0) || events.every((n, index) => n === sizes[index])) {
    const centre = events[0] === 0 ? 0 : 1;
    return new Map(large.map((count) => [count, { centre, shrunk: centre, tail: 1 }]));
  }
  const { centre, units } = funnel(events, sizes);
  const { shrunk } = shrinkMeans(
    events.map((n, index) => n / sizes[index]!),
    sizes.map((size) => (centre * (1 - centre)) / size),
  );
  return new Map(
    large.map((count, index) => [count, { centre, shrunk: shrunk[index]!, tail: units[index]!.exactUpperTail }]),
  );
}
