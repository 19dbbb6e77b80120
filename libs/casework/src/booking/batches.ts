import { Batch, LabStep, WorkCentre, joinBatch, openBatch, release } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { LockedCase } from './locked-case.js';
import type { StepToClaim } from './claims.js';

/** Puts steps into the open runs that the plan chose; a run takes one unit for each arch, such as a flask. */
export async function joinChosenRuns(tx: EntityManager, steps: readonly StepToClaim[]): Promise<void> {
  for (const { step, labStepId } of steps) {
    if (step.batchId !== null) await joinBatch(tx, { batchId: step.batchId, labStepId, units: step.arches.length });
  }
}

/**
 * Opens a run for each booked step that shares its machine with others, in the place of the step's own time, so that
 * other cases' work can join it.
 */
export async function openOwnRuns(
  tx: EntityManager,
  { loaded }: LockedCase,
  stepIds: readonly string[],
  now: Date,
): Promise<void> {
  const steps = await tx.findBy(LabStep, { id: In([...stepIds]), state: In(['planned', 'ready']) });
  const centres = await tx.findBy(WorkCentre, { id: In(steps.flatMap(({ workCentreId }) => workCentreId ?? [])) });
  for (const step of steps) {
    const kind = loaded.chain.steps.find(({ code }) => code === step.code)?.batch ?? null;
    const centre = centres.find(({ id }) => id === step.workCentreId);
    if (step.batchId === null && kind !== null && centre?.batchKind === kind) {
      await openRun(tx, step, { kind, size: centre.batchSize ?? 1 }, now);
    }
  }
}

/** A step that leaves its place in between can't share it: others would join a run that is not there. */
async function openRun(
  tx: EntityManager,
  { id, placeId, startsAt, endsAt, segments, arches }: LabStep,
  { kind, size }: Pick<Batch, 'kind' | 'size'>,
  now: Date,
): Promise<void> {
  const isWhole = segments.length > 0 && segments.every(({ holdsPlace }) => holdsPlace);
  if (placeId === null || startsAt === null || endsAt === null || !isWhole || arches.length > size) return;
  await release(tx, { labStepIds: [id] });
  const batchId = await openBatch(tx, { placeId, kind, startsAt, endsAt, size }, now);
  await joinBatch(tx, { batchId, labStepId: id, units: arches.length });
}
