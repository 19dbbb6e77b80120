import { Practitioner } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { RecordNotFoundError } from '../errors.js';

/** @throws {RecordNotFoundError} for anybody who is no clinician of the organisation */
export async function requireClinician(tx: EntityManager, clinicianId: string): Promise<void> {
  if (await tx.existsBy(Practitioner, { id: clinicianId, role: 'clinician' })) return;
  throw new RecordNotFoundError('clinician', clinicianId);
}
