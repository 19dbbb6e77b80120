import { requireWhole } from './errors.js';

/**
 * Runs of one machine that takes several pieces at once, one run after the other.
 *
 * @param pieces whole pieces, 0 or more
 * @param size pieces that one run takes, 1 or more
 * @param runMinutes whole minutes of one run
 * @returns number of runs, and minutes that the machine is taken in all
 */
export function machineRuns(
  pieces: number,
  size: number,
  runMinutes: number,
): { runs: number; machineMinutes: number } {
  requireWhole('The number of pieces', pieces, 0);
  requireWhole('The size of a batch', size, 1);
  requireWhole('The minutes of a run', runMinutes, 0);
  const runs = Math.ceil(pieces / size);
  return { runs, machineMinutes: runs * runMinutes };
}
