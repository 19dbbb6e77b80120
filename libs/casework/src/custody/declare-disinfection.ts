import type { DeclareDisinfection, ObjectView } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { CustodyObject, DisinfectionRecord, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { WrongStateError } from '../errors.js';
import { noteObject } from './note-object.js';
import { lockObject, requireHolder } from './object-access.js';
import { viewObject } from './object-view.js';

/**
 * Notes somebody's word that an object was disinfected where it is now: with what, how and when. Each dispatch needs one
 * of its own.
 *
 * @throws {RequestInvalidError} for a time to come, or before the object came here
 */
export async function declareObjectDisinfected(
  tx: EntityManager,
  actor: Actor,
  objectId: string,
  { agent, method, at }: DeclareDisinfection,
  now: Date,
): Promise<ObjectView> {
  const recordedBy = personOf(actor, 'Disinfection is declared by the person who did it.');
  const object = await lockObject(tx, actor, objectId);
  requireHolder(actor, object);
  if (object.state !== 'in-use' && object.state !== 'quarantined')
    throw new WrongStateError(`Object ${object.code}`, object.state, 'an object that somebody has in hand');
  const disinfectedAt = new Date(at);
  requireSinceArrival(object, disinfectedAt, now);
  await tx.insert(DisinfectionRecord, { id: uuidv7(), objectId, agent, method, disinfectedAt, recordedBy });
  await tx.update(CustodyObject, { id: objectId }, { version: object.version + 1 });
  await noteObject(
    tx,
    actor,
    object,
    { kind: 'disinfection-declared', action: 'declare-disinfection', what: 'was declared disinfected.' },
    now,
  );
  return viewObject(tx, actor, objectId, now);
}

function requireSinceArrival({ arrivedAt }: CustodyObject, at: Date, now: Date): void {
  if (at <= now && (arrivedAt === null || at >= arrivedAt)) return;
  const from = arrivedAt === null ? '' : `from ${arrivedAt.toISOString()}, when it came here, `;
  const accepted = `an instant ${from}up to ${now.toISOString()}`;
  throw new RequestInvalidError([{ path: 'at', problem: 'is not while the object was here', accepted }]);
}
