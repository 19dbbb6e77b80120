import type { Crew } from './crew.js';
import type { StreamsState } from './streams.js';

/** When to stop; Infinity for no matter when. */
export interface SearchLimit {
  readonly seconds: number;
  readonly epochs: number;
}

export interface SearchRun extends StreamsState {
  /** Of each stream. */
  readonly epochs: number;
  readonly seconds: number;
}

/** Between two looks at the clock. */
const STRETCH_SECONDS = 0.1;

/**
 * Searches until the limit or a proof; every shorter plan and every better bound is told. The time decides only how many
 * epochs there are, so that their number alone says what was found.
 *
 * @param clock seconds since any moment
 */
export async function runSearch(
  crew: Crew,
  limit: SearchLimit,
  clock: () => number,
  tell: (line: string) => void,
): Promise<SearchRun> {
  const startedAt = clock();
  const passed = (): number => clock() - startedAt;
  let told = '';
  let epochs = 0;
  for (;;) {
    const state = await crew.advance(epochs);
    const { makespan, lowerBound } = state;
    const seconds = passed();
    const line = `${makespan === Infinity ? 'no plan yet' : String(makespan)}, bound ${String(lowerBound)}`;
    if (line !== told) tell(`${seconds.toFixed(1)} s, epoch ${String(epochs)}: ${line}`);
    told = line;
    if (makespan <= lowerBound || epochs >= limit.epochs || seconds >= limit.seconds)
      return { ...state, epochs, seconds };
    epochs += limit.seconds === Infinity ? 1 : stretch(epochs, seconds, limit.seconds);
  }
}

/** Epochs that fit between two looks at the clock, by what they took so far. */
function stretch(epochs: number, seconds: number, limit: number): number {
  const rate = epochs / Math.max(seconds, 0.001);
  return Math.max(1, Math.floor(rate * Math.min(STRETCH_SECONDS, limit - seconds)));
}
