import type { ChangeCaseState } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Clinic, Transfer, TreatmentCase, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';

/**
 * Proposes a case to another clinic, which sees it from now on and is told, or to a practice outside.
 *
 * @throws {RequestInvalidError} when nobody, both, or the case's own clinic is named
 */
export async function proposeTransfer(
  tx: EntityManager,
  actor: Actor,
  { id: caseId, homeClinicId, clinicIds }: TreatmentCase,
  { clinicId, outsidePractice, reason }: ChangeCaseState,
  now: Date,
): Promise<void> {
  if ((clinicId === undefined) === (outsidePractice === undefined) || clinicId === homeClinicId) {
    const accepted = 'another clinic than the case’s own, or the name of a practice outside';
    throw new RequestInvalidError([{ path: 'clinicId', problem: 'does not say who takes the case over', accepted }]);
  }
  if (clinicId !== undefined && !(await tx.existsBy(Clinic, { id: clinicId })))
    throw new RecordNotFoundError('clinic', clinicId);
  await tx.insert(Transfer, {
    id: uuidv7(),
    caseId,
    fromClinicId: homeClinicId,
    toClinicId: clinicId ?? null,
    toName: outsidePractice ?? null,
    reason,
    state: 'proposed',
    proposedAt: now,
    proposedBy: personOf(actor, 'A person hands a case over, not the background service.'),
  });
  if (clinicId === undefined) return;
  await tx.update(TreatmentCase, { id: caseId }, { clinicIds: [...new Set([...clinicIds, clinicId])] });
  const about = { kind: 'transfer-proposed', caseId, alertId: null };
  await notifyColleagues(tx, actor.organisationId, about, { recipient: 'clinic', clinicId }, now);
}

/** How a transfer ended. */
export interface TransferDecision {
  readonly state: Exclude<Transfer['state'], 'proposed'>;
  readonly reason: string;
}

/**
 * A case that was handed over changes its state otherwise than by a decision on the transfer: it goes on where it was
 * handed to, if a person of that clinic says so, else where it was. Stopped altogether, it was not taken over either.
 */
export async function settleTransfer(
  tx: EntityManager,
  actor: Actor,
  { id: caseId }: TreatmentCase,
  { to, reason }: ChangeCaseState,
  now: Date,
): Promise<void> {
  const transfer = await tx.findOneBy(Transfer, { caseId, state: 'proposed' });
  if (transfer === null) return;
  const { toClinicId } = transfer;
  const scope = clinicScope(actor);
  const isTaken = to === 'open' && toClinicId !== null && (scope === null || scope.includes(toClinicId));
  await endTransfer(tx, actor, transfer, { state: isTaken ? 'accepted' : 'withdrawn', reason }, now);
}

/** Writes a decision down, gives the case to the clinic that goes on with it, and tells the other one. */
export async function endTransfer(
  tx: EntityManager,
  actor: Actor,
  { id, caseId, fromClinicId, toClinicId, version }: Transfer,
  { state, reason }: TransferDecision,
  now: Date,
): Promise<void> {
  const decidedBy = personOf(actor, 'A person hands a case over, not the background service.');
  await tx.update(Transfer, { id }, { state, decisionReason: reason, decidedAt: now, decidedBy, version: version + 1 });
  if (toClinicId === null) return;
  const { clinicIds, homeClinicId } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const clinics =
    state === 'accepted'
      ? { homeClinicId: toClinicId, clinicIds: [toClinicId], clinicianId: null }
      : { clinicIds: clinicIds.filter((each) => each !== toClinicId || each === homeClinicId) };
  await tx.update(TreatmentCase, { id: caseId }, clinics);
  const about = { kind: `transfer-${state}`, caseId, alertId: null };
  const clinicId = state === 'withdrawn' ? toClinicId : fromClinicId;
  await notifyColleagues(tx, actor.organisationId, about, { recipient: 'clinic', clinicId }, now);
}
