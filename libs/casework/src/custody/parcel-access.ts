import { CustodyObject, Parcel, ParcelObject } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { caseScope } from '../cases/case-access.js';
import { NotYoursError, RecordNotFoundError } from '../errors.js';

/** A parcel is seen at both of its ends. `$1` are the actor's clinics, `$2` the laboratories; null where they don't bound. */
export const PARCEL_IN_SCOPE = `($1::uuid[] IS NULL OR p.clinic_id = ANY ($1)) AND ($2::uuid[] IS NULL OR p.laboratory_id = ANY ($2))`;

type Ends = Pick<Parcel, 'direction' | 'clinicId' | 'laboratoryId'>;

/** A parcel with what is in it; nobody else changes either until the transaction ends. */
export interface LockedParcel {
  readonly parcel: Parcel;
  readonly objects: readonly CustodyObject[];
  /** Objects that are not in it, and were asked for. */
  readonly others: readonly CustodyObject[];
}

/**
 * The cases first, as everything that changes them does, in one order for everybody.
 *
 * @param alsoIds objects beside those of the parcel that are about to change
 * @throws {RecordNotFoundError} for a parcel unknown here or with neither end at the actor's
 */
export async function lockParcel(
  tx: EntityManager,
  actor: Actor,
  parcelId: string,
  alsoIds: readonly string[] = [],
): Promise<LockedParcel> {
  const found: unknown[] = await tx.query(`SELECT FROM parcel p WHERE p.id = $3 AND ${PARCEL_IN_SCOPE}`, [
    ...caseScope(actor),
    parcelId,
  ]);
  if (found.length === 0) throw new RecordNotFoundError('parcel', parcelId);
  const inside = await tx.findBy(ParcelObject, { parcelId });
  const objects = await lockObjects(tx, [...inside.map(({ objectId }) => objectId), ...alsoIds]);
  const parcel = await tx.findOneOrFail(Parcel, { where: { id: parcelId }, lock: { mode: 'pessimistic_write' } });
  const lines = await tx.findBy(ParcelObject, { parcelId });
  const isInside = ({ id }: CustodyObject) => lines.some(({ objectId }) => objectId === id);
  return { parcel, objects: objects.filter(isInside), others: objects.filter((object) => !isInside(object)) };
}

/** Objects with their cases, locked in the order of their ids. */
export async function lockObjects(tx: EntityManager, objectIds: readonly string[]): Promise<CustodyObject[]> {
  await tx.query(
    `SELECT FROM treatment_case WHERE id IN (SELECT case_id FROM custody_object WHERE id = ANY ($1::uuid[]))
     ORDER BY id FOR UPDATE`,
    [objectIds],
  );
  return tx.find(CustodyObject, {
    where: { id: In([...objectIds]) },
    order: { id: 'ASC' },
    lock: { mode: 'pessimistic_write' },
  });
}

/** @throws {NotYoursError} unless the actor works where the parcel leaves */
export function requireSender(actor: Actor, ends: Ends): void {
  requireEnd(actor, ends, ends.direction === 'to-lab' ? 'clinic' : 'laboratory', 'sends');
}

/** @throws {NotYoursError} unless the actor works where the parcel arrives */
export function requireReceiver(actor: Actor, ends: Ends): void {
  requireEnd(actor, ends, ends.direction === 'to-lab' ? 'laboratory' : 'clinic', 'receives');
}

function requireEnd(
  { role, clinicIds, laboratoryIds }: Actor,
  { clinicId, laboratoryId }: Ends,
  end: 'clinic' | 'laboratory',
  does: string,
): void {
  if (role === 'administrator') return;
  const isThere =
    end === 'clinic'
      ? role !== 'lab' && clinicIds.includes(clinicId)
      : role === 'lab' && laboratoryIds.includes(laboratoryId);
  if (!isThere) throw new NotYoursError(`This is done at the ${end} that ${does} the parcel.`);
}
