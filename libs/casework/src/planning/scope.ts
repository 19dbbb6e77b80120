import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';

/**
 * Lets through whoever works at one of the clinics; an administrator and the background service work everywhere.
 *
 * @throws {RecordNotFoundError} so that a clinic's cases stay unknown to the others
 */
export function requireClinic(actor: Actor, clinicIds: readonly string[], kind: string, id: string): void {
  if (actor.role === 'administrator' || actor.role === 'service') return;
  if (clinicIds.some((clinicId) => actor.clinicIds.includes(clinicId))) return;
  throw new RecordNotFoundError(kind, id);
}
