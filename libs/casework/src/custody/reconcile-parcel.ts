import type { ParcelView, ReconcileParcel } from '@archwright/contracts';
import { RequestInvalidError, requireVersion } from '@archwright/platform';
import { changeObjectState } from '@archwright/protocol';
import { CustodyObject, Parcel, ParcelObject, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { lookAgain } from '../arrivals/look-again.js';
import { personOf } from '../capture/person.js';
import { WrongStateError } from '../errors.js';
import { noteObject } from './note-object.js';
import { lockParcel, requireReceiver, type LockedParcel } from './parcel-access.js';
import { viewParcel } from './parcel-view.js';
import { tellSender, type Mismatch } from './tell-sender.js';
import { objectsByTwoNames } from './two-names.js';

type Finding = ReconcileParcel['findings'][number];

/**
 * Says of each object whether it is there as announced. What is missing, damaged, without its declaration of disinfection
 * or was not announced is quarantined, and the sender is told.
 *
 * @throws {RequestInvalidError} when an announced object is left out, or a name does not fit
 */
export async function reconcileParcel(
  tx: EntityManager,
  actor: Actor,
  parcelId: string,
  { version, findings }: ReconcileParcel & { version: number },
  now: Date,
): Promise<ParcelView> {
  const reconciledBy = personOf(actor, 'A parcel is checked by a person.');
  // Whoever may not see the parcel learns nothing of codes either.
  await viewParcel(tx, actor, parcelId);
  const named = await objectsByTwoNames(tx, findings, 'findings');
  const locked = await lockParcel(
    tx,
    actor,
    parcelId,
    named.map(({ id }) => id),
  );
  requireReceiver(actor, locked.parcel);
  requireVersion(version, locked.parcel.version);
  if (locked.parcel.state !== 'received') throw new WrongStateError('The parcel', locked.parcel.state, 'received');
  requireComplete(locked, findings);
  const mismatches: Mismatch[] = [];
  for (const object of [...locked.objects, ...locked.others]) {
    const finding = findings.find(({ code }) => code === object.code);
    if (finding === undefined) throw new Error(`Object ${object.code} has no finding.`);
    const found = locked.others.includes(object) ? 'unexpected' : finding.found;
    await noteLine(tx, locked.parcel, object, { ...finding, found });
    await settle(tx, actor, { parcel: locked.parcel, object }, { ...finding, found }, now);
    if (found !== 'present') mismatches.push({ object, found });
  }
  const reconciled = { state: 'reconciled' as const, reconciledAt: now, reconciledBy, version: version + 1 };
  await tx.update(Parcel, { id: parcelId }, reconciled);
  await tellSender(tx, actor, locked.parcel, mismatches, now);
  await lookAgain(tx, [...new Set(locked.objects.map(({ caseId }) => caseId))], now);
  return viewParcel(tx, actor, parcelId);
}

function requireComplete({ objects, others }: LockedParcel, findings: readonly Finding[]): void {
  const forgotten = objects.filter(({ code }) => !findings.some((each) => each.code === code));
  if (forgotten.length > 0) {
    const codes = forgotten.map(({ code }) => code).join(', ');
    const problem = `says nothing of ${codes}`;
    throw new RequestInvalidError([{ path: 'findings', problem, accepted: 'a finding for each announced object' }]);
  }
  const absent = findings.findIndex(({ code, found }) => found === 'missing' && others.some((o) => o.code === code));
  if (absent >= 0) {
    const accepted = 'present, damaged or undeclared for what was not announced';
    throw new RequestInvalidError([
      { path: `findings.${String(absent)}.found`, problem: 'was not announced', accepted },
    ]);
  }
}

type Found = Omit<Finding, 'found'> & { readonly found: NonNullable<ParcelObject['found']> };

async function noteLine(
  tx: EntityManager,
  { id: parcelId }: Parcel,
  { id: objectId }: CustodyObject,
  { found, note }: Found,
): Promise<void> {
  const line = { found, note: note ?? null };
  if (found === 'unexpected') await tx.insert(ParcelObject, { id: uuidv7(), parcelId, objectId, ...line });
  else await tx.update(ParcelObject, { parcelId, objectId }, line);
}

/** What was discarded while it was on its way stays so, wherever it turns up; so does what was set aside elsewhere. */
async function settle(
  tx: EntityManager,
  actor: Actor,
  { parcel, object }: { readonly parcel: Parcel; readonly object: CustodyObject },
  { found, note, place }: Found,
  now: Date,
): Promise<void> {
  if (object.state === 'discarded' || (found === 'missing' && object.state !== 'in-transit')) return;
  const isFine = found === 'present' && object.state === 'in-transit';
  const stateReason = isFine ? null : [WORDS[found], note].filter((part) => part !== undefined).join(': ');
  const arrived =
    found === 'missing' ? {} : { ...receiverOf(parcel), place: place ?? null, arrivedAt: parcel.receivedAt ?? now };
  const state = changeObjectState(object.state, isFine ? 'receive' : 'set-aside');
  await tx.update(CustodyObject, { id: object.id }, { ...arrived, state, stateReason, version: object.version + 1 });
  const what = isFine ? 'arrived.' : `is quarantined. ${stateReason ?? ''}`;
  const kind = isFine ? 'object-arrived' : 'object-quarantined';
  await noteObject(tx, actor, object, { kind, action: 'reconcile-object', what }, now);
}

const WORDS: Readonly<Record<Found['found'], string>> = {
  present: 'In a parcel although it was not on its way',
  missing: 'Missing from its parcel',
  unexpected: 'In a parcel that did not announce it',
  damaged: 'Damaged on arrival',
  undeclared: 'Arrived without its declaration of disinfection',
};

function receiverOf({ direction, clinicId, laboratoryId }: Parcel): Partial<CustodyObject> {
  return direction === 'to-lab'
    ? { holder: 'laboratory', laboratoryId, clinicId: null }
    : { holder: 'clinic', clinicId, laboratoryId: null };
}
