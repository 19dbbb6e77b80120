import { requireVersion } from '@archwright/platform';
import { TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireCase } from './case-access.js';

/**
 * The case's row, locked until the transaction ends, if it still is as the actor saw it.
 *
 * @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics
 * @throws {PreconditionFailedError} when somebody changed the case meanwhile
 */
export async function lockCaseAt(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  version: number,
): Promise<TreatmentCase> {
  await requireCase(tx, actor, caseId);
  const locked = await tx.findOneOrFail(TreatmentCase, { where: { id: caseId }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, locked.version);
  return locked;
}
