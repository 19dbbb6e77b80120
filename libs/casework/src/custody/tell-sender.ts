import { appendCaseEvent, type CustodyObject, type Parcel, type ParcelObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { notifyColleagues, type Colleagues } from '../reminders/colleague-notice.js';

/** An object that did not arrive as it was announced. */
export interface Mismatch {
  readonly object: CustodyObject;
  readonly found: NonNullable<ParcelObject['found']>;
}

/** Tells the sender of each case concerned, once: what is amiss stands among the quarantined objects. */
export async function tellSender(
  tx: EntityManager,
  { organisationId, userId }: Actor,
  { id: parcelId, direction, clinicId, laboratoryId }: Parcel,
  mismatches: readonly Mismatch[],
  now: Date,
): Promise<void> {
  const sender: Colleagues =
    direction === 'to-lab' ? { recipient: 'clinic', clinicId } : { recipient: 'laboratory', laboratoryId };
  for (const caseId of new Set(mismatches.map(({ object }) => object.caseId))) {
    const own = mismatches.filter(({ object }) => object.caseId === caseId);
    const amiss = own.map(({ object, found }) => `${object.code} ${found}`).join(', ');
    const body = { parcelId, sentence: `A parcel did not arrive as announced: ${amiss}. The sender was told.` };
    await appendCaseEvent(tx, { caseId, kind: 'parcel-mismatch', body, actorId: userId, at: now });
    await notifyColleagues(tx, organisationId, { kind: 'parcel-mismatch', caseId, alertId: null }, sender, now);
  }
}
