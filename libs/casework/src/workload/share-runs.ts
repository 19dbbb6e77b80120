import { Batch, WorkCentre, joinBatch, openBatch } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { StepToClaim } from '../booking/claims.js';

/** Puts each step into the run at its place and start, opening one where there is none. */
export async function shareRuns(tx: EntityManager, steps: readonly StepToClaim[], now: Date): Promise<void> {
  const centres = await tx.findBy(WorkCentre, { id: In(steps.map(({ step }) => step.workCentreId)) });
  for (const { step, labStepId } of steps) {
    const { placeId, startMs, endMs, workCentreId, arches } = step;
    const { batchKind, batchSize } = centres.find(({ id }) => id === workCentreId) ?? {};
    if (placeId === null || batchKind == null) continue;
    const [startsAt, endsAt] = [new Date(startMs), new Date(endMs)];
    const known = await tx.findOneBy(Batch, { placeId, startsAt });
    const batchId =
      known?.id ?? (await openBatch(tx, { placeId, kind: batchKind, startsAt, endsAt, size: batchSize ?? 1 }, now));
    await joinBatch(tx, { batchId, labStepId, units: arches.length });
  }
}
