import type { PatientPage, PatientQuery } from '@archwright/contracts';
import { decodeCursor, pageOf, type Cursor } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { PATIENT_IN_SCOPE, clinicScope } from './patient-access.js';
import { patientViewOf } from './patient-rows.js';
import { searchRange } from './search-key.js';
import { loadPatients } from './view-patient.js';

/**
 * Patients whose family name, or family and given name, begins with what was typed; all of them when nothing was. In the
 * order of their names.
 */
export async function findPatients(
  tx: EntityManager,
  actor: Actor,
  { q, cursor, limit }: PatientQuery,
): Promise<PatientPage> {
  const { from, until } = searchRange(q ?? '');
  const after: Cursor | null = cursor === undefined ? null : decodeCursor(cursor);
  const found: Cursor[] = await tx.query(
    `SELECT p.id, i.search_key AS "sortKey" FROM patient_identity i JOIN patient p ON p.id = i.patient_id
     WHERE i.search_key >= $2 AND i.search_key < $3
       AND ($4::text IS NULL OR i.search_key > $4 OR (i.search_key = $4 AND p.id > $5::uuid))
       AND ${PATIENT_IN_SCOPE}
     ORDER BY i.search_key, p.id LIMIT $6`,
    [clinicScope(actor), after?.sortKey ?? from, until, after?.sortKey ?? null, after?.id ?? null, limit + 1],
  );
  const { items, next } = pageOf(found, limit, (row) => row);
  const patients = await loadPatients(
    tx,
    items.map(({ id }) => id),
  );
  return { items: patients.map(patientViewOf), next };
}
