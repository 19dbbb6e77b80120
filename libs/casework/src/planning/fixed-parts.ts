import type { CaseChain, CaseProgress, FixedStage, FixedStep } from '@archwright/protocol';
import type { LabStep } from '@archwright/records';
import { hasBegun, homeTravelOf, type StageBooking } from './bookings.js';

/** Visits that have begun, and those that `keeps` names; the last go of each. Visits at home have no chair of the clinic. */
export function fixedStages(
  bookings: readonly StageBooking[],
  keeps: (booking: StageBooking) => boolean,
): FixedStage[] {
  const last = new Map<string, FixedStage>();
  for (const booking of [...bookings].sort((a, b) => a.stage.round - b.stage.round)) {
    if (!hasBegun(booking) && !keeps(booking)) continue;
    const { appointment, stage } = booking;
    const { clinicId, clinicianId, chairId, startsAt, endsAt } = appointment;
    last.set(stage.code, {
      code: stage.code,
      startMs: startsAt.getTime(),
      endMs: endsAt.getTime(),
      clinicId,
      clinicianId,
      chairId: chairId ?? '',
      homeTravelMinutes: homeTravelOf(appointment),
    });
  }
  return [...last.values()];
}

/** Steps that are begun or done, and planned ones that `keeps` names; the last go of each. */
export function fixedSteps(steps: readonly LabStep[], nowMs: number, keeps: (step: LabStep) => boolean): FixedStep[] {
  const last = new Map<string, FixedStep>();
  for (const step of [...steps].sort((a, b) => a.round - b.round)) {
    const fixed = toFixedStep(step, nowMs, keeps);
    if (fixed !== null) last.set(step.code, fixed);
  }
  return [...last.values()];
}

function toFixedStep(step: LabStep, nowMs: number, keeps: (step: LabStep) => boolean): FixedStep | null {
  const { code, state, laboratoryId, placeId } = step;
  const startMs = (step.startedAt ?? step.startsAt)?.getTime();
  const plannedEndMs = (step.finishedAt ?? step.endsAt)?.getTime();
  if (startMs === undefined || plannedEndMs === undefined || laboratoryId === null) return null;
  if (state === 'finished') return { code, startMs, endMs: plannedEndMs, laboratoryId, placeId };
  // A step that overruns is done no earlier than now.
  if (state === 'started' || state === 'paused')
    return { code, startMs, endMs: Math.max(plannedEndMs, nowMs), laboratoryId, placeId };
  const isPlanned = state === 'planned' || state === 'ready';
  return isPlanned && keeps(step) ? { code, startMs, endMs: plannedEndMs, laboratoryId, placeId } : null;
}

/** A visit whose patient has arrived is under way, whatever its stage still says. */
export function progressWithArrivals(progress: CaseProgress, bookings: readonly StageBooking[]): CaseProgress {
  const begun = new Set(bookings.filter(hasBegun).map(({ stage }) => `${stage.code} ${String(stage.round)}`));
  return {
    ...progress,
    stages: progress.stages.map((row) => {
      const isArrived =
        begun.has(`${row.code} ${String(row.round)}`) && (row.state === 'planned' || row.state === 'ready');
      return isArrived ? { ...row, state: 'in-progress' as const } : row;
    }),
  };
}

/** Laboratory work whose visits on both sides stay where they are can stay, too. */
export function stepsBetween(chain: CaseChain, stays: (stage: string) => boolean): (step: LabStep) => boolean {
  const codes = new Set(
    chain.steps.filter((step) => stays(step.afterStage) && stays(step.beforeStage)).map(({ code }) => code),
  );
  return (step) => codes.has(step.code);
}
