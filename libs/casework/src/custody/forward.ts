import { RequestInvalidError } from '@archwright/platform';
import { TreatmentCase, type CustodyObject } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { declaredObjects } from './declared-objects.js';
import { notToBePacked, requireFit } from './fit-for-use.js';

/**
 * Lets an object go to another clinic: like any dispatch only declared disinfected, and only where its case is treated.
 *
 * @throws {WrongStateError} when it may not leave
 * @throws {RequestInvalidError} when the clinic does not treat the case
 */
export async function requireForwardable(
  tx: EntityManager,
  object: CustodyObject,
  clinicId: string,
  now: Date,
): Promise<void> {
  await requireTreatedAt(tx, [object], clinicId);
  const declared = await declaredObjects(tx, [object]);
  requireFit(
    object,
    notToBePacked(object, declared.has(object.id), now),
    'an object in use, declared disinfected here',
  );
}

/** @throws {RequestInvalidError} naming what belongs to a case that is not treated at the clinic */
export async function requireTreatedAt(
  tx: EntityManager,
  objects: readonly CustodyObject[],
  clinicId: string,
): Promise<void> {
  const cases = await tx.findBy(TreatmentCase, { id: In(objects.map(({ caseId }) => caseId)) });
  const treated = new Set(cases.filter(({ clinicIds }) => clinicIds.includes(clinicId)).map(({ id }) => id));
  const strange = objects.filter(({ caseId }) => !treated.has(caseId)).map(({ code }) => code);
  if (strange.length === 0) return;
  const problem = `does not treat the case of ${strange.join(', ')}`;
  throw new RequestInvalidError([{ path: 'clinicId', problem, accepted: 'a clinic of the case' }]);
}
