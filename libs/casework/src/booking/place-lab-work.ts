import type { CasePlan, CasePlanLabStep } from '@archwright/protocol';
import { CourierLeg, LabStep, uuidv7, type ClaimRequest } from '@archwright/records';
import { In, IsNull, MoreThan, type EntityManager } from 'typeorm';
import { PlanStaleError } from '../planning/stored-plan.js';
import type { StepToClaim } from './claims.js';
import type { LockedCase } from './locked-case.js';
import { segmentsOf } from './segments.js';

/** A step under a hold waits as unplanned until the hold is confirmed. */
export async function placeSteps(
  tx: EntityManager,
  locked: LockedCase,
  steps: readonly CasePlanLabStep[],
  hold: NonNullable<ClaimRequest['hold']> | null,
): Promise<StepToClaim[]> {
  const placed: StepToClaim[] = [];
  for (const step of steps) {
    const row = rowOf(locked, step);
    const own = hold ?? holdOf(locked, row);
    const state = hold !== null ? row.state : row.state === 'unplanned' ? 'planned' : row.state;
    await tx.update(
      LabStep,
      { id: row.id },
      {
        laboratoryId: step.laboratoryId,
        workCentreId: step.workCentreId,
        placeId: step.placeId,
        holdId: own?.id ?? null,
        startsAt: new Date(step.startMs),
        endsAt: new Date(step.endMs),
        segments: segmentsOf(step, locked.loaded.chain),
        state,
        version: row.version + 1,
      },
    );
    placed.push({ step, labStepId: row.id, hold: own });
  }
  return placed;
}

function rowOf({ loaded }: LockedCase, step: CasePlanLabStep): LabStep {
  const row = loaded.rows.steps.find(
    (each) => each.code === step.code && each.round === step.round && each.state !== 'discarded',
  );
  if (row === undefined)
    throw new PlanStaleError(`The case has no laboratory step ${step.code} of that round any more.`);
  return row;
}

function holdOf({ hold }: LockedCase, { holdId }: LabStep): NonNullable<ClaimRequest['hold']> | null {
  return hold !== null && hold.id === holdId ? { id: hold.id, until: hold.expiresAt } : null;
}

/**
 * Ways to come between clinic and laboratory, in the place of those planned before; those to a provisional visit stay
 * under its hold.
 */
export async function placeLegs(
  tx: EntityManager,
  { treatmentCase, loaded, bookings, hold }: LockedCase,
  { transports }: Pick<CasePlan, 'transports'>,
  holdId: string | null,
  now: Date,
): Promise<void> {
  const caseId = treatmentCase.id;
  if (holdId === null) await dropPlannedLegs(tx, caseId, now);
  if (holdId === null && hold !== null) await tx.delete(CourierLeg, { holdId: hold.id, departsAt: MoreThan(now) });
  const keptUnder = (stage: string | undefined): string | null =>
    bookings.find((each) => each.stage.code === stage && each.appointment.state === 'provisional')?.appointment
      .holdId ?? null;
  const phases = new Map(loaded.chain.phases.map((phase) => [phase.code, phase]));
  for (const { phase, direction, courierId, departsAtMs, arrivesAtMs } of transports) {
    if (departsAtMs < now.getTime()) continue;
    await tx.insert(CourierLeg, {
      id: uuidv7(),
      caseId,
      courierId,
      holdId: holdId ?? keptUnder(phases.get(phase)?.beforeStage),
      direction,
      afterStage: phases.get(phase)?.afterStage ?? null,
      beforeStage: phases.get(phase)?.beforeStage ?? null,
      departsAt: new Date(departsAtMs),
      arrivesAt: new Date(arrivesAtMs),
      state: 'planned',
    });
  }
}

/** Ways to come that are booked, to and from some stages or all; those under a hold belong to it. */
export async function dropPlannedLegs(
  tx: EntityManager,
  caseId: string,
  now: Date,
  stages: readonly string[] | null = null,
): Promise<void> {
  const planned = { caseId, state: 'planned', holdId: IsNull(), departsAt: MoreThan(now) } as const;
  if (stages === null) await tx.delete(CourierLeg, planned);
  else {
    await tx.delete(CourierLeg, { ...planned, beforeStage: In([...stages]) });
    await tx.delete(CourierLeg, { ...planned, afterStage: In([...stages]) });
  }
}

/** Takes the time away from steps that are to come; they wait to be planned again. */
export async function unplanSteps(tx: EntityManager, stepIds: readonly string[]): Promise<void> {
  await tx.update(
    LabStep,
    { id: In([...stepIds]) },
    {
      laboratoryId: null,
      workCentreId: null,
      placeId: null,
      holdId: null,
      startsAt: null,
      endsAt: null,
      segments: [],
      state: 'unplanned',
      version: () => 'version + 1',
    },
  );
}
