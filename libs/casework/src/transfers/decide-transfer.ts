import type { DecideTransfer, TransferView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { Transfer, TreatmentCase, appendCaseEvent, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { changeCaseState } from '../cases/change-state.js';
import { NotYoursError, WrongStateError } from '../errors.js';
import { endTransfer, type TransferDecision } from './transfer-of-case.js';
import { viewTransfer } from './transfer-view.js';

const STATE: Readonly<Record<DecideTransfer['decision'], TransferDecision['state']>> = {
  accept: 'accepted',
  decline: 'declined',
  withdraw: 'withdrawn',
};

/**
 * Decides a proposed transfer. Accepted by a clinic of ours, the case goes on there; accepted by a practice outside, it
 * stays handed over; declined or withdrawn, it goes on where it was. Whatever goes on is planned anew, after what may have
 * changed meanwhile was looked at.
 *
 * @throws {NotYoursError} for those whose decision it is not
 * @throws {WrongStateError} when it is decided already
 */
export async function decideTransfer(
  tx: EntityManager,
  actor: Actor,
  transferId: string,
  { version, decision, reason }: DecideTransfer & { version: number },
  now: Date,
): Promise<TransferView> {
  personOf(actor, 'A transfer is decided by a person.');
  const { caseId } = await viewTransfer(tx, actor, transferId, now);
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
  const transfer = await tx.findOneOrFail(Transfer, { where: { id: transferId }, lock: { mode: 'pessimistic_write' } });
  requireDecider(actor, transfer, decision);
  requireVersion(version, transfer.version);
  if (transfer.state !== 'proposed') throw new WrongStateError('The transfer', transfer.state, 'proposed');
  const state = STATE[decision];
  await endTransfer(tx, actor, transfer, { state, reason }, now);
  await note(tx, actor, transfer, { state, reason }, now);
  const goesOn = state !== 'accepted' || transfer.toClinicId !== null;
  if (goesOn) await goOn(tx, actor, caseId, reason, now);
  return viewTransfer(tx, actor, transferId, now);
}

/** A practice outside has no sign-in here: its answer is noted by the clinic that asked. */
function requireDecider(
  { role, clinicIds }: Actor,
  { fromClinicId, toClinicId }: Transfer,
  decision: DecideTransfer['decision'],
): void {
  const clinicId = decision === 'withdraw' ? fromClinicId : (toClinicId ?? fromClinicId);
  if (role === 'administrator' || clinicIds.includes(clinicId)) return;
  const who = decision === 'withdraw' ? 'the clinic that proposed it' : 'the clinic that it is proposed to';
  throw new NotYoursError(`To ${decision} a transfer is for ${who}.`);
}

/** Whoever declines does not see the case any more; it goes on all the same. */
async function goOn(tx: EntityManager, actor: Actor, caseId: string, reason: string, now: Date): Promise<void> {
  const { version } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const everywhere: Actor = { ...actor, role: 'service' };
  await changeCaseState(tx, everywhere, { caseId, version }, { to: 'open', reason, reviewOn: null }, now);
}

async function note(
  tx: EntityManager,
  { userId }: Actor,
  { id, caseId }: Transfer,
  { state, reason }: TransferDecision,
  now: Date,
): Promise<void> {
  const body = { transferId: id, sentence: `The transfer was ${state}: ${reason}` };
  await appendCaseEvent(tx, { caseId, kind: `transfer-${state}`, body, actorId: userId, at: now });
  await recordAudit(tx, {
    actorId: userId,
    action: 'decide-transfer',
    subjectKind: 'transfer',
    subjectId: id,
    details: { state },
    at: now,
  });
}
