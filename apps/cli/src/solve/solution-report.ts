import { gapPercent, verdictOf } from '@archwright/planner';
import type { Answer, InstanceFormat } from './read-instance.js';
import type { SearchRun } from './run-search.js';

export interface RunSettings {
  readonly threads: number;
  readonly streams: number;
  readonly seed: number;
}

/** What is printed as JSON: numbers that are not known, and those of plans that do not exist, are null. */
export function solutionReport(format: InstanceFormat, answer: Answer | null, run: SearchRun, settings: RunSettings) {
  const { lowerBound, seconds, epochs } = run;
  const known = { lowerBound: Number.isFinite(lowerBound) ? lowerBound : null };
  const how = { seconds, ...settings, epochs };
  if (answer === null) {
    const status = lowerBound === Infinity ? 'infeasible' : 'unknown';
    return { format, makespan: null, ...known, gapPercent: null, verdict: null, status, starts: null, ...how };
  }
  const { makespan, ...times } = answer;
  return {
    format,
    makespan,
    ...known,
    gapPercent: gapPercent(makespan, lowerBound),
    verdict: verdictOf(makespan, lowerBound),
    status: makespan <= lowerBound ? 'optimal' : 'feasible',
    ...times,
    ...how,
  };
}

/** The same in one line for a reader. */
export function solutionWords(answer: Answer | null, { lowerBound, epochs }: SearchRun): string {
  const ran = `(epochs: ${String(epochs)})\n`;
  if (answer === null) {
    return lowerBound === Infinity
      ? `proved: there is no plan ${ran}`
      : `no plan found; none can be shorter than ${String(lowerBound)} ${ran}`;
  }
  const { makespan } = answer;
  const gap = gapPercent(makespan, lowerBound).toFixed(1);
  const verdict = {
    'proved best': 'proved best',
    within: `at most ${gap} % above the best`,
    'bound is weak here': `at most ${gap} % above the best, but the bound is weak here`,
  }[verdictOf(makespan, lowerBound)];
  return `makespan ${String(makespan)}, bound ${String(lowerBound)}, gap ${gap} %: ${verdict} ${ran}`;
}
