import type { ParcelAction, ParcelView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { changeObjectState, type ObjectAction } from '@archwright/protocol';
import { CourierLeg, CustodyObject, Parcel, ParcelObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { noteObject } from './note-object.js';
import { lockParcel, requireReceiver, requireSender, type LockedParcel } from './parcel-access.js';
import { viewParcel } from './parcel-view.js';

/**
 * What happens to a parcel on its way: something is taken out again, it goes with the courier, it arrives.
 *
 * @throws {WrongStateError} when it is not where the action may follow
 */
export async function actOnParcel(
  tx: EntityManager,
  actor: Actor,
  parcelId: string,
  { version, ...given }: ParcelAction & { version: number },
  now: Date,
): Promise<ParcelView> {
  const person = personOf(actor, 'A parcel is handled by a person.');
  const locked = await lockParcel(tx, actor, parcelId);
  requireVersion(version, locked.parcel.version);
  switch (given.action) {
    case 'take-out':
      await takeOut(tx, actor, locked, given.objectId, now);
      break;
    case 'hand-over':
      await handOver(tx, { ...actor, userId: person }, locked, given.carrier, now);
      break;
    case 'receive':
      await receive(tx, { ...actor, userId: person }, locked, now);
  }
  await tx.update(Parcel, { id: parcelId }, { version: version + 1 });
  return viewParcel(tx, actor, parcelId);
}

/** Also what was discarded or set aside since it was packed. */
async function takeOut(
  tx: EntityManager,
  actor: Actor,
  { parcel, objects }: LockedParcel,
  objectId: string,
  now: Date,
): Promise<void> {
  requireSender(actor, parcel);
  requireState(parcel, 'packed');
  const object = objects.find(({ id }) => id === objectId);
  if (object === undefined) throw new RecordNotFoundError('object in this parcel', objectId);
  await tx.delete(ParcelObject, { parcelId: parcel.id, objectId });
  if (object.state === 'packed') await change(tx, object, 'take-out');
  const what = 'was taken out of its parcel.';
  await noteObject(tx, actor, object, { kind: 'object-taken-out', action: 'take-out-object', what }, now);
}

async function handOver(
  tx: EntityManager,
  actor: Actor & { readonly userId: string },
  { parcel, objects }: LockedParcel,
  carrier: string,
  now: Date,
): Promise<void> {
  requireSender(actor, parcel);
  requireState(parcel, 'packed');
  if (objects.length === 0) throw new WrongStateError('The parcel', 'empty', 'a parcel with something in it');
  const changed = objects.find(({ state }) => state !== 'packed');
  if (changed !== undefined)
    throw new WrongStateError(
      `Object ${changed.code} in it`,
      changed.state,
      'the parcel without it: take it out first',
    );
  const { clinicId, laboratoryId } = parcel;
  for (const object of objects) {
    await change(tx, object, 'hand-over', { holder: 'courier', clinicId, laboratoryId, place: null });
    const what = `was handed over to ${carrier}.`;
    await noteObject(tx, actor, object, { kind: 'object-handed-over', action: 'hand-over-object', what }, now);
  }
  await tx.update(
    Parcel,
    { id: parcel.id },
    { state: 'handed-over', handedOverAt: now, handedOverBy: actor.userId, carrier },
  );
  await moveLeg(tx, parcel, 'under-way');
}

/** It is there; what is in it is looked at object by object. */
async function receive(
  tx: EntityManager,
  actor: Actor & { readonly userId: string },
  { parcel, objects }: LockedParcel,
  now: Date,
): Promise<void> {
  requireReceiver(actor, parcel);
  requireState(parcel, 'handed-over');
  await tx.update(Parcel, { id: parcel.id }, { state: 'received', receivedAt: now, receivedBy: actor.userId });
  await moveLeg(tx, parcel, 'arrived');
  for (const object of objects) {
    const what = 'arrived in its parcel, to be checked.';
    await noteObject(tx, actor, object, { kind: 'parcel-received', action: 'receive-object', what }, now);
  }
}

function requireState({ state }: Parcel, accepted: Parcel['state']): void {
  if (state !== accepted) throw new WrongStateError('The parcel', state, accepted);
}

async function change(
  tx: EntityManager,
  { id, state, version }: CustodyObject,
  action: ObjectAction,
  fields: Partial<CustodyObject> = {},
): Promise<void> {
  await tx.update(CustodyObject, { id }, { ...fields, state: changeObjectState(state, action), version: version + 1 });
}

async function moveLeg(tx: EntityManager, { courierLegId }: Parcel, state: CourierLeg['state']): Promise<void> {
  if (courierLegId !== null) await tx.update(CourierLeg, { id: courierLegId }, { state });
}
