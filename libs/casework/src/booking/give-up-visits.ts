import { changeStageState, isToCome } from '@archwright/protocol';
import { Appointment, Stage, leaveBatches, release } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { freeRecalls } from '../aftercare/recall-bookings.js';
import type { StageBooking } from '../planning/bookings.js';
import { dropPlannedLegs, unplanSteps } from './place-lab-work.js';
import type { LockedCase } from './locked-case.js';

/** Cancels visits: their time is free again and their stages wait to be planned. Laboratory work is left to the caller. */
export async function cancelVisits(
  tx: EntityManager,
  bookings: readonly StageBooking[],
  outcome: { readonly state: 'cancelled' | 'missed'; readonly reason: string },
): Promise<void> {
  const ids = bookings.map(({ appointment }) => appointment.id);
  await release(tx, { appointmentIds: ids });
  await freeRecalls(tx, ids);
  await tx.update(
    Appointment,
    { id: In(ids) },
    { state: outcome.state, stateReason: outcome.reason, holdId: null, version: () => 'version + 1' },
  );
  for (const { stage } of bookings) {
    if (!isToCome(stage.state) || stage.state === 'waiting') continue;
    await tx.update(
      Stage,
      { id: stage.id },
      { state: changeStageState(stage.state, 'waiting'), version: stage.version + 1 },
    );
  }
}

/** Laboratory work to come that leads to these stages gives its time back and waits to be planned again. */
export async function giveUpSteps(
  tx: EntityManager,
  { loaded, treatmentCase }: Pick<LockedCase, 'loaded' | 'treatmentCase'>,
  stages: readonly string[],
  now: Date,
): Promise<void> {
  const ids = loaded.rows.steps
    .filter(({ state, beforeStage }) => (state === 'planned' || state === 'ready') && stages.includes(beforeStage))
    .map(({ id }) => id);
  await dropPlannedLegs(tx, treatmentCase.id, now, stages);
  if (ids.length === 0) return;
  await leaveBatches(tx, ids);
  await release(tx, { labStepIds: ids });
  await unplanSteps(tx, ids);
}
