const GRID_MINUTES = 5;

/**
 * Minutes of work on one arch, rounded up to the 5-minute grid.
 *
 * @param minutesBothArches minutes when both arches are treated
 * @param factor multiplier for one arch: chair 0.7, bench 0.55 (common practice, no source), 1 for work that does not shrink
 */
export function singleArchMinutes(minutesBothArches: number, factor: number): number {
  // 0.55 has no exact binary form: a product a hair above a multiple of 5 must not cost five minutes more.
  return Math.ceil((minutesBothArches * factor) / GRID_MINUTES - 1e-9) * GRID_MINUTES;
}
