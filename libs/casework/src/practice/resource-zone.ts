import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';

/**
 * Zone of a chair, person or kit: that of its clinic, for a person who works at several the first one of the actor's.
 *
 * @throws {RecordNotFoundError} when it is retired, of another kind, or none of the actor's clinics'
 */
export async function requireResourceZone(tx: EntityManager, actor: Actor, resourceId: string): Promise<string> {
  const clinics: { id: string; zone: string }[] = await tx.query(
    `SELECT clinic.id, clinic.zone FROM clinic JOIN (
       SELECT id, clinic_id FROM chair UNION ALL
       SELECT id, clinic_id FROM kit UNION ALL
       SELECT practitioner_id, clinic_id FROM practitioner_clinic) AS at ON at.clinic_id = clinic.id
     JOIN resource ON resource.id = at.id
     WHERE at.id = $1 AND resource.retired_at IS NULL ORDER BY clinic.id`,
    [resourceId],
  );
  const scope = clinicScope(actor);
  const own = clinics.find(({ id }) => scope === null || scope.includes(id));
  if (own === undefined) throw new RecordNotFoundError('chair, person or kit', resourceId);
  return own.zone;
}
