import type { Search } from '@archwright/planner';

/** When to stop; Infinity for no matter when. */
export interface SearchLimit {
  readonly seconds: number;
  readonly epochs: number;
}

/**
 * Searches until the limit or a proof; every shorter plan and every better bound is told. The time decides between
 * epochs only, so that their number alone says what was found.
 *
 * @returns seconds it took
 */
export function runSearch(search: Search<unknown>, limit: SearchLimit, tell: (line: string) => void): number {
  const startedAt = performance.now();
  const passed = (): number => (performance.now() - startedAt) / 1000;
  let told = '';
  for (;;) {
    const { best, lowerBound, epochs } = search;
    const makespan = best?.makespan ?? Infinity;
    const state = `${best === null ? 'no plan yet' : String(makespan)}, bound ${String(lowerBound)}`;
    if (state !== told) tell(`${passed().toFixed(1)} s, epoch ${String(epochs)}: ${state}`);
    told = state;
    if (makespan <= lowerBound || epochs >= limit.epochs || passed() >= limit.seconds) return passed();
    search.runEpoch();
  }
}
