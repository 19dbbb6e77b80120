import type { PatientPage, PatientQuery } from '@archwright/contracts';
import { decodeCursor, pageOf, type Cursor } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { PATIENT_IN_SCOPE, clinicScope } from './patient-access.js';
import { patientViewOf } from './patient-rows.js';
import { searchRange } from './search-key.js';
import { loadPatients } from './view-patient.js';

/** Every patient once, in the order of family names. `$2` and `$3` bound the keys from the cursor on. */
const ALL = `SELECT p.id, i.search_key AS "sortKey" FROM patient_identity i JOIN patient p ON p.id = i.patient_id
  WHERE i.search_key >= $2 AND i.search_key < $3
    AND ($4::text IS NULL OR i.search_key > $4 OR (i.search_key = $4 AND p.id > $5::uuid))`;

/** In the order of the words that fit. Whose name fits from several words on is listed at the first of them (`$8`: as typed). */
const NAMED = `SELECT p.id, k.search_key AS "sortKey" FROM patient_name_key k
  JOIN patient_identity i ON i.patient_id = k.patient_id JOIN patient p ON p.id = k.patient_id
  WHERE k.search_key >= $2 AND k.search_key < $3
    AND ($4::text IS NULL OR k.search_key > $4 OR (k.search_key = $4 AND p.id > $5::uuid))
    AND NOT EXISTS (SELECT FROM patient_name_key other WHERE other.patient_id = k.patient_id
      AND other.search_key >= $8 AND other.search_key < k.search_key)`;

/** Patients of whom a word of the name, and what follows it, begins with what was typed, or who were born on a day. */
export async function findPatients(
  tx: EntityManager,
  actor: Actor,
  { q, birthOn, cursor, limit }: PatientQuery,
): Promise<PatientPage> {
  const { from, until } = searchRange(q ?? '');
  const after: Cursor | null = cursor === undefined ? null : decodeCursor(cursor);
  const isNamed = from !== '';
  const found: Cursor[] = await tx.query(
    `${isNamed ? NAMED : ALL} AND ($7::date IS NULL OR i.birth_on = $7) AND ${PATIENT_IN_SCOPE}
     ORDER BY "sortKey", p.id LIMIT $6`,
    [
      clinicScope(actor),
      after?.sortKey ?? from,
      until,
      after?.sortKey ?? null,
      after?.id ?? null,
      limit + 1,
      birthOn ?? null,
      ...(isNamed ? [from] : []),
    ],
  );
  const { items, next } = pageOf(found, limit, (row) => row);
  const patients = await loadPatients(
    tx,
    items.map(({ id }) => id),
  );
  return { items: patients.map(patientViewOf), next };
}
