import type { CreatePatient } from '@archwright/contracts';
import { PatientNameKey, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { nameKeysOf } from './search-key.js';

interface Named {
  readonly id: string;
  readonly body: CreatePatient;
}

/** What new patients are found by: their names from each word on. */
export async function writeNameKeys(tx: EntityManager, patients: readonly Named[]): Promise<void> {
  await tx.insert(
    PatientNameKey,
    patients.flatMap(({ id, body }) =>
      nameKeysOf(body).map((searchKey) => ({ id: uuidv7(), patientId: id, searchKey })),
    ),
  );
}

/** The same for one whose name may have changed. */
export async function rewriteNameKeys(tx: EntityManager, id: string, body: CreatePatient): Promise<void> {
  await tx.delete(PatientNameKey, { patientId: id });
  await writeNameKeys(tx, [{ id, body }]);
}
