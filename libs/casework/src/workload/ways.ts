import type { MovedWork } from '@archwright/protocol';
import { CourierLeg, uuidv7 } from '@archwright/records';
import { IsNull, MoreThan, type EntityManager } from 'typeorm';
import type { LockedCase } from '../booking/locked-case.js';

/** The ways of work that has moved, in the place of those planned before; what is under way or gone stays. */
export async function replaceWays(
  tx: EntityManager,
  { treatmentCase, loaded }: LockedCase,
  { phase: code, transports }: MovedWork,
  now: Date,
): Promise<void> {
  const phase = loaded.chain.phases.find((each) => each.code === code);
  if (phase === undefined) return;
  const { afterStage, beforeStage } = phase;
  const caseId = treatmentCase.id;
  for (const { direction, courierId, departsAtMs, arrivesAtMs } of transports) {
    if (departsAtMs < now.getTime()) continue;
    const own = { caseId, direction, afterStage, beforeStage };
    await tx.delete(CourierLeg, { ...own, state: 'planned', holdId: IsNull(), departsAt: MoreThan(now) });
    const times = { departsAt: new Date(departsAtMs), arrivesAt: new Date(arrivesAtMs) };
    await tx.insert(CourierLeg, { ...own, ...times, id: uuidv7(), courierId, holdId: null, state: 'planned' });
  }
}
