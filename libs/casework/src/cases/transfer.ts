import type { ChangeCaseState } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Clinic, Transfer, TreatmentCase, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError, RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';

/**
 * Proposes a case to another clinic, which sees it from now on, or to a practice outside.
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
    proposedBy: requirePerson(actor),
  });
  if (clinicId !== undefined)
    await tx.update(TreatmentCase, { id: caseId }, { clinicIds: [...new Set([...clinicIds, clinicId])] });
}

/**
 * A case that was handed over goes on: where it was handed to, if a person of that clinic says so, else where it was.
 * Stopped altogether, it was not taken over either.
 */
export async function settleTransfer(
  tx: EntityManager,
  actor: Actor,
  { id: caseId, homeClinicId, clinicIds }: TreatmentCase,
  goesOn: boolean,
  now: Date,
): Promise<void> {
  const transfer = await tx.findOneBy(Transfer, { caseId, state: 'proposed' });
  if (transfer === null) return;
  const { toClinicId } = transfer;
  const scope = clinicScope(actor);
  const isTaken = goesOn && toClinicId !== null && (scope === null || scope.includes(toClinicId));
  await tx.update(
    Transfer,
    { id: transfer.id },
    { state: isTaken ? 'accepted' : 'declined', decidedAt: now, decidedBy: requirePerson(actor) },
  );
  if (isTaken) {
    const taken = { homeClinicId: toClinicId, clinicIds: [toClinicId], clinicianId: null };
    await tx.update(TreatmentCase, { id: caseId }, taken);
    return;
  }
  const kept = clinicIds.filter((id) => id !== toClinicId || id === homeClinicId);
  await tx.update(TreatmentCase, { id: caseId }, { clinicIds: kept });
}

function requirePerson({ userId }: Actor): string {
  if (userId === null) throw new NotYoursError('A person hands a case over, not the background service.');
  return userId;
}
