import type { ObjectDeed, ObjectView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { changeObjectState } from '@archwright/protocol';
import { CustodyObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { lookAgain } from '../arrivals/look-again.js';
import { personOf } from '../capture/person.js';
import { WrongStateError } from '../errors.js';
import { notToBeUsed, pastUseBy, requireFit } from './fit-for-use.js';
import { requireForwardable } from './forward.js';
import { noteObject } from './note-object.js';
import { lockObject, requireHolder } from './object-access.js';
import { viewObject } from './object-view.js';

/** Past tense, for the history: of an object. */
const WHAT: Readonly<Record<ObjectDeed['action'], string>> = {
  'book-in': 'was booked in',
  move: 'was moved',
  'set-use-by': 'has another use-by',
  quarantine: 'was quarantined',
  release: 'was released',
  forward: 'was forwarded to another clinic',
  'give-to-patient': 'was given to the patient',
  'take-back': 'was taken back from the patient',
  discard: 'was discarded',
  'declare-lost': 'was declared lost',
  find: 'was found again and is quarantined',
};

/**
 * What a person does with an object in hand, outside of parcels.
 *
 * @throws {IllegalTransitionError} when its state does not allow it
 * @throws {WrongStateError} when its use-by has passed and it would be used
 */
export async function actOnObject(
  tx: EntityManager,
  actor: Actor,
  objectId: string,
  { version, ...deed }: ObjectDeed & { version: number },
  now: Date,
): Promise<ObjectView> {
  personOf(actor, 'An object is handled by a person.');
  const object = await lockObject(tx, actor, objectId);
  requireHolder(actor, object);
  requireVersion(version, object.version);
  if (deed.action === 'forward') await requireForwardable(tx, object, deed.clinicId, now);
  const change = changeOf(actor, object, deed, now);
  await tx.update(CustodyObject, { id: objectId }, { ...change, version: object.version + 1 });
  const reason = 'reason' in deed ? `: ${deed.reason}` : '.';
  const what = `${WHAT[deed.action]}${reason}`;
  await noteObject(tx, actor, object, { kind: `object-${deed.action}`, action: `${deed.action}-object`, what }, now);
  await lookAgain(tx, [object.caseId], now);
  // Whoever sends a thing away may have lost sight of it by that.
  return viewObject(tx, { ...actor, role: 'service' }, objectId, now);
}

function changeOf(actor: Actor, object: CustodyObject, deed: ObjectDeed, now: Date): Partial<CustodyObject> {
  switch (deed.action) {
    case 'move':
      if (object.state !== 'in-use' && object.state !== 'quarantined')
        throw new WrongStateError(`Object ${object.code}`, object.state, 'in-use or quarantined');
      return { place: deed.place };
    case 'set-use-by':
      if (object.state === 'discarded') throw new WrongStateError(`Object ${object.code}`, 'discarded', 'any other');
      return { useBy: deed.useBy === null ? null : new Date(deed.useBy) };
    default:
      return { state: changeObjectState(object.state, deed.action), ...followingOf(actor, object, deed, now) };
  }
}

function followingOf(
  actor: Actor,
  object: CustodyObject,
  deed: Exclude<ObjectDeed, { action: 'move' | 'set-use-by' }>,
  now: Date,
): Partial<CustodyObject> {
  switch (deed.action) {
    case 'book-in':
    case 'take-back':
      return { ...inHandOf(actor, object, now), place: deed.place, stateReason: null };
    case 'find':
      return { ...inHandOf(actor, object, now), stateReason: deed.reason };
    case 'quarantine':
      return { stateReason: deed.reason };
    case 'release':
      requireFit(object, pastUseBy(object, now), 'an object whose use-by has not passed');
      return { ...inHandOf(actor, object, now), stateReason: null };
    case 'forward':
      requireInClinic(object);
      return { holder: 'courier', clinicId: deed.clinicId, place: null };
    case 'give-to-patient':
      requireInClinic(object);
      requireFit(object, notToBeUsed(object, now), 'an object whose use-by has not passed');
      return { holder: 'patient', place: null };
    case 'discard':
    case 'declare-lost':
      return { holder: 'nobody', place: null, stateReason: deed.reason };
  }
}

function requireInClinic({ code, holder }: CustodyObject): void {
  if (holder !== 'clinic') throw new WrongStateError(`Object ${code}`, `with the ${holder}`, 'an object in the clinic');
}

/** Whoever has it in hand already; else, as it comes back from elsewhere, the side of the person who says so. */
function inHandOf(
  { role }: Actor,
  { holder, clinicId, laboratoryId }: CustodyObject,
  now: Date,
): Partial<CustodyObject> {
  if (holder === 'clinic' || holder === 'laboratory') return {};
  const isAtLaboratory = laboratoryId !== null && (role === 'lab' || clinicId === null);
  return isAtLaboratory
    ? { holder: 'laboratory', laboratoryId, clinicId: null, arrivedAt: now }
    : { holder: 'clinic', clinicId, laboratoryId: null, arrivedAt: now };
}
