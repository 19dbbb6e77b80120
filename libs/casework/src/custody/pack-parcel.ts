import type { HandedOver, PackParcel, ParcelView } from '@archwright/contracts';
import { RequestInvalidError, type FieldProblem } from '@archwright/platform';
import { changeObjectState } from '@archwright/protocol';
import { Clinic, CourierLeg, CustodyObject, Laboratory, Parcel, ParcelObject, uuidv7 } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError } from '../errors.js';
import { declaredObjects } from './declared-objects.js';
import { notToBePacked, requireFit } from './fit-for-use.js';
import { requireTreatedAt } from './forward.js';
import { objectsByTwoNames } from './two-names.js';
import { noteObject } from './note-object.js';
import { lockObjects, requireSender } from './parcel-access.js';
import { viewParcel } from './parcel-view.js';

/**
 * Packs objects for their way between a clinic and a laboratory. Each is named twice, by the number of its case and its
 * own code; each was declared disinfected since it came to where it is.
 *
 * @throws {RequestInvalidError} when the two names of an object do not belong together, or it is elsewhere
 * @throws {WrongStateError} when an object may not leave
 */
export async function packParcel(
  tx: EntityManager,
  actor: Actor,
  { direction, clinicId, laboratoryId, courierLegId, objects: named }: PackParcel,
  now: Date,
): Promise<ParcelView> {
  const packedBy = personOf(actor, 'A parcel is packed by a person.');
  await requireEnds(tx, { clinicId, laboratoryId, courierLegId, direction });
  requireSender(actor, { direction, clinicId, laboratoryId });
  const found = await objectsByTwoNames(tx, named, 'objects');
  const objects = await lockObjects(
    tx,
    found.map(({ id }) => id),
  );
  requireHere(objects, named, { direction, clinicId, laboratoryId });
  if (direction === 'to-clinic') await requireTreatedAt(tx, objects, clinicId);
  const declared = await declaredObjects(tx, objects);
  for (const object of objects)
    requireFit(
      object,
      notToBePacked(object, declared.has(object.id), now),
      'an object in use, declared disinfected here',
    );
  const parcelId = uuidv7();
  await tx.insert(Parcel, {
    id: parcelId,
    direction,
    clinicId,
    laboratoryId,
    courierLegId,
    state: 'packed',
    packedAt: now,
    packedBy,
  });
  for (const object of objects) {
    const { id: objectId, version } = object;
    await tx.insert(ParcelObject, { id: uuidv7(), parcelId, objectId });
    const state = changeObjectState(object.state, 'pack');
    await tx.update(CustodyObject, { id: objectId }, { state, version: version + 1 });
    const what = direction === 'to-lab' ? 'was packed for the laboratory.' : 'was packed for the clinic.';
    await noteObject(tx, actor, object, { kind: 'object-packed', action: 'pack-object', what }, now);
  }
  return viewParcel(tx, actor, parcelId);
}

async function requireEnds(
  tx: EntityManager,
  { clinicId, laboratoryId, courierLegId, direction }: Omit<PackParcel, 'objects'>,
): Promise<void> {
  if (!(await tx.existsBy(Clinic, { id: clinicId }))) throw new RecordNotFoundError('clinic', clinicId);
  if (!(await tx.existsBy(Laboratory, { id: laboratoryId }))) throw new RecordNotFoundError('laboratory', laboratoryId);
  if (courierLegId === null) return;
  const isPlanned = await tx.existsBy(CourierLeg, { id: courierLegId, direction, state: In(['planned', 'under-way']) });
  if (!isPlanned) throw new RecordNotFoundError('planned run', courierLegId);
}

/** Nobody packs what is not in front of them. */
function requireHere(
  objects: readonly CustodyObject[],
  named: readonly HandedOver[],
  { direction, clinicId, laboratoryId }: Pick<PackParcel, 'direction' | 'clinicId' | 'laboratoryId'>,
): void {
  const elsewhere = objects.filter(({ holder, ...object }) =>
    direction === 'to-lab'
      ? holder !== 'clinic' || object.clinicId !== clinicId
      : holder !== 'laboratory' || object.laboratoryId !== laboratoryId,
  );
  if (elsewhere.length === 0) return;
  const problems = elsewhere.map(({ code, holder }): FieldProblem => {
    const path = `objects.${String(named.findIndex((each) => each.code === code))}`;
    return { path, problem: `${code} is with the ${holder}`, accepted: 'an object that is where the parcel is packed' };
  });
  throw new RequestInvalidError(problems);
}
