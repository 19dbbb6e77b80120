import { gapPercent, verdictOf } from '@archwright/planner';
import type { OpenInstance } from './open-instance.js';

/** What is printed as JSON: numbers that are not known, and those of plans that do not exist, are null. */
export function solutionReport({ format, search, checkedAnswer }: OpenInstance, seconds: number, seed: number) {
  const answer = checkedAnswer();
  const { lowerBound, epochs } = search;
  const known = { lowerBound: Number.isFinite(lowerBound) ? lowerBound : null };
  const run = { seconds, threads: 1, seed, epochs };
  if (answer === null) {
    const status = lowerBound === Infinity ? 'infeasible' : 'unknown';
    return { format, makespan: null, ...known, gapPercent: null, verdict: null, status, starts: null, ...run };
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
    ...run,
  };
}

/** The same in one line for a reader. */
export function solutionWords({ search, checkedAnswer }: OpenInstance): string {
  const { lowerBound, epochs } = search;
  const makespan = checkedAnswer()?.makespan;
  const ran = `(epochs: ${String(epochs)})\n`;
  if (makespan === undefined) {
    return lowerBound === Infinity
      ? `proved: there is no plan ${ran}`
      : `no plan found; none can be shorter than ${String(lowerBound)} ${ran}`;
  }
  const gap = gapPercent(makespan, lowerBound).toFixed(1);
  const verdict = {
    'proved best': 'proved best',
    within: `at most ${gap} % above the best`,
    'bound is weak here': `at most ${gap} % above the best, but the bound is weak here`,
  }[verdictOf(makespan, lowerBound)];
  return `makespan ${String(makespan)}, bound ${String(lowerBound)}, gap ${gap} %: ${verdict} ${ran}`;
}
