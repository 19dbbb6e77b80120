import type { PatientRow } from '@archwright/interop';
import type { EntityManager } from 'typeorm';
import type { PatientRows } from './patient-rows.js';
import { searchKeyOf } from './search-key.js';
import { loadPatients } from './view-patient.js';

/** Patients who may be those of some rows of a file. */
export interface KnownPersons {
  readonly byImportKey: ReadonlyMap<string, PatientRows>;
  /** By name and birth date, as {@link personOf} writes them. */
  readonly byPerson: ReadonlyMap<string, readonly PatientRows[]>;
}

/** Name and birth date as they are compared: whoever shares both is taken for the same person. */
export function personOf(person: { familyName: string; givenName: string; birthOn: string }): string {
  return `${person.birthOn} ${searchKeyOf(person)}`;
}

/**
 * Loads who is already there, and locks their rows: what is compared stays so until the end of the transaction.
 */
export async function knownPersons(tx: EntityManager, rows: readonly PatientRow[]): Promise<KnownPersons> {
  const found: { id: string }[] = await tx.query(
    `SELECT p.id FROM patient p WHERE p.id IN (
       SELECT i.patient_id FROM patient_identity i WHERE i.import_key = ANY ($1::text[])
       UNION
       SELECT i.patient_id FROM patient_identity i JOIN unnest($2::text[], $3::date[]) AS w (search_key, birth_on)
         ON i.search_key = w.search_key AND i.birth_on = w.birth_on)
     ORDER BY p.id FOR UPDATE`,
    [
      rows.map(({ key }) => key),
      rows.map(({ patient }) => searchKeyOf(patient)),
      rows.map(({ patient }) => patient.birthOn),
    ],
  );
  const ids = found.map(({ id }) => id);
  const patients = await loadPatients(tx, ids);
  const byPerson = new Map<string, PatientRows[]>();
  for (const each of patients) {
    const person = personOf(each.identity);
    byPerson.set(person, [...(byPerson.get(person) ?? []), each]);
  }
  const byImportKey = new Map(
    patients.flatMap((each) => (each.identity.importKey === null ? [] : [[each.identity.importKey, each] as const])),
  );
  return { byImportKey, byPerson };
}
