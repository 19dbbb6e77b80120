import { TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';

/**
 * Who may see a case: someone at one of its clinics, a laboratory that works or has worked on it. `$1` and `$2` are the
 * clinics and laboratories that bound what the actor sees, null where they don't.
 */
export const CASE_IN_SCOPE = `($1::uuid[] IS NULL OR c.clinic_ids && $1::uuid[])
  AND ($2::uuid[] IS NULL OR EXISTS (SELECT FROM lab_step s WHERE s.case_id = c.id AND s.laboratory_id = ANY ($2::uuid[])))`;

export function caseScope({
  role,
  clinicIds,
  laboratoryIds,
}: Actor): [readonly string[] | null, readonly string[] | null] {
  if (role === 'administrator' || role === 'service') return [null, null];
  return role === 'lab' ? [null, laboratoryIds] : [clinicIds, null];
}

/** @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics or laboratories */
export async function requireCase(tx: EntityManager, actor: Actor, caseId: string): Promise<TreatmentCase> {
  const found: unknown[] = await tx.query(`SELECT FROM treatment_case c WHERE c.id = $3 AND ${CASE_IN_SCOPE}`, [
    ...caseScope(actor),
    caseId,
  ]);
  if (found.length === 0) throw new RecordNotFoundError('case', caseId);
  return tx.findOneByOrFail(TreatmentCase, { id: caseId });
}
