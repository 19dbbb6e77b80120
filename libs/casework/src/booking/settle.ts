import { changeStageState } from '@archwright/protocol';
import { Appointment, AppointmentStage, LabStep, Stage, TreatmentCase } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { bookRecalls } from '../aftercare/recall-bookings.js';
import { openReadyLabWork } from '../capture/lab-work.js';
import type { LockedCase } from './locked-case.js';

/** Makes visits that were merely held count: booked, or provisional under the hold that is left. */
export async function settleVisits(
  tx: EntityManager,
  appointmentIds: readonly string[],
  state: 'booked' | 'provisional',
  holdId: string | null,
): Promise<void> {
  await tx.update(Appointment, { id: In([...appointmentIds]) }, { state, holdId, version: () => 'version + 1' });
  await planStages(tx, appointmentIds);
}

/** A stage whose visit is booked is planned; one that is planned or ready stays so. */
export async function planStages(tx: EntityManager, appointmentIds: readonly string[]): Promise<void> {
  const links = await tx.findBy(AppointmentStage, { appointmentId: In([...appointmentIds]) });
  const stages = await tx.findBy(Stage, { id: In(links.map(({ stageId }) => stageId)), state: 'waiting' });
  for (const { id, state, version } of stages) {
    await tx.update(Stage, { id }, { state: changeStageState(state, 'planned'), version: version + 1 });
  }
  await bookRecalls(tx, appointmentIds);
}

/** Steps whose time is settled are planned. */
export async function planSteps(tx: EntityManager, stepIds: readonly string[], holdId: string | null): Promise<void> {
  await tx.update(LabStep, { id: In([...stepIds]) }, { holdId, version: () => 'version + 1' });
  await tx.update(LabStep, { id: In([...stepIds]), state: 'unplanned' }, { state: 'planned' });
}

/** Every change of what is booked makes the case another one than the one that was planned from. */
export async function raiseCaseVersion(tx: EntityManager, caseId: string): Promise<void> {
  await tx.increment(TreatmentCase, { id: caseId }, 'version', 1);
}

/** Work whose order was signed before it was planned anew may begin as soon as it has a time again. */
export async function openSignedWork(
  tx: EntityManager,
  { loaded, treatmentCase }: Pick<LockedCase, 'loaded' | 'treatmentCase'>,
  now: Date,
): Promise<void> {
  const [stage] = loaded.rows.stages;
  if (stage !== undefined) await openReadyLabWork(tx, { stage, treatmentCase }, now);
}
