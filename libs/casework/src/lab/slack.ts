import type { BenchStep } from './bench-steps.js';

type Timed = Pick<BenchStep, 'id' | 'startsAt' | 'endsAt' | 'state' | 'leavesBy'>;

const UNFINISHED = new Set(['planned', 'ready', 'started', 'paused']);

/** Whether the step still keeps a bench busy. */
export const isUnfinished = ({ state }: Pick<BenchStep, 'state'>): boolean => UNFINISHED.has(state);

/** Steps of one stretch of work between two visits of a case. */
export const stretchOf = ({ caseId, phase, afterStage, beforeStage }: BenchStep): string =>
  [caseId, phase, afterStage, beforeStage].join(' ');

/**
 * Slack of each unfinished step of one stretch, in whole minutes by the clock, nights included: what is left between the
 * time at which the work that follows it will be done and the time at which it must leave. Negative: late.
 *
 * What is behind plan moves on at `now` and takes its planned length; what the plan has after it waits for it. Gaps
 * between the steps take lateness up.
 *
 * @param stretch every step of the stretch; finished ones push nothing
 * @returns by step id; null while the visit that the work is for is not booked
 */
export function slackMinutes(stretch: readonly Timed[], now: Date): Map<string, number | null> {
  const steps = stretch.filter(isUnfinished).sort((one, other) => one.startsAt.getTime() - other.startsAt.getTime());
  const expected = new Map<string, number>();
  for (const step of steps) expected.set(step.id, expectedEndMs(step, steps, expected, now.getTime()));
  return new Map(
    steps.map((step) => {
      if (step.leavesBy === null) return [step.id, null];
      const following = steps.filter((other) => other === step || other.startsAt >= step.endsAt);
      const doneMs = Math.max(...following.map(({ id }) => expected.get(id) ?? 0));
      return [step.id, Math.floor((step.leavesBy.getTime() - doneMs) / 60_000)];
    }),
  );
}

function expectedEndMs(step: Timed, steps: readonly Timed[], expected: Map<string, number>, nowMs: number): number {
  const [startMs, endMs] = [step.startsAt.getTime(), step.endsAt.getTime()];
  if (step.state === 'started' || step.state === 'paused') return Math.max(endMs, nowMs);
  const before = steps.filter(({ endsAt }) => endsAt <= step.startsAt).map(({ id }) => expected.get(id) ?? 0);
  return Math.max(startMs, nowMs, ...before) + (endMs - startMs);
}
