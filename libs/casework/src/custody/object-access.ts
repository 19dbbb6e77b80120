import { CustodyObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { NotYoursError, RecordNotFoundError } from '../errors.js';

/** An object is seen with its case, and by whoever has it. `$1` and `$2` as {@link CASE_IN_SCOPE} has them; `c` is its case. */
export const OBJECT_IN_SCOPE = `(${CASE_IN_SCOPE} OR o.clinic_id = ANY ($1::uuid[]) OR o.laboratory_id = ANY ($2::uuid[]))`;

/**
 * An object and its case, locked until the transaction ends; the case first, as everything that changes it does.
 *
 * @throws {RecordNotFoundError} for an object unknown here or out of the actor's sight
 */
export async function lockObject(tx: EntityManager, actor: Actor, objectId: string): Promise<CustodyObject> {
  const [seen]: { caseId: string }[] = await tx.query(
    `SELECT o.case_id AS "caseId" FROM custody_object o JOIN treatment_case c ON c.id = o.case_id
     WHERE o.id = $3 AND ${OBJECT_IN_SCOPE}`,
    [...caseScope(actor), objectId],
  );
  if (seen === undefined) throw new RecordNotFoundError('object', objectId);
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [seen.caseId]);
  return tx.findOneOrFail(CustodyObject, { where: { id: objectId }, lock: { mode: 'pessimistic_write' } });
}

/**
 * What is in a clinic is handled by its people, what is in a laboratory by that laboratory's; what is with neither, by
 * those who had it last or wait for it.
 *
 * @throws {NotYoursError} for everybody else
 */
export function requireHolder(
  { role, clinicIds, laboratoryIds }: Actor,
  { code, holder, clinicId, laboratoryId }: Pick<CustodyObject, 'code' | 'holder' | 'clinicId' | 'laboratoryId'>,
): void {
  if (role === 'administrator') return;
  const isTheirs =
    role === 'lab'
      ? holder !== 'clinic' && laboratoryIds.includes(laboratoryId ?? '')
      : holder !== 'laboratory' && clinicIds.includes(clinicId ?? '');
  if (!isTheirs) throw new NotYoursError(`Object ${code} is handled where it is: with the ${holder}.`);
}
