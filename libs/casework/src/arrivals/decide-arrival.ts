import type { ArrivalCheckView, DecideArrival } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { ArrivalCheck, appendCaseEvent, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { WrongStateError } from '../errors.js';
import { viewArrivalCheck } from './arrival-view.js';
import { closeCall } from './look-for-arrivals.js';

/**
 * Decides what becomes of a visit whose work has not arrived: it stays, or the patient is called and it is moved, by the
 * same preview as any move. The call to the patient stays on the list only for the latter.
 *
 * @throws {WrongStateError} when nothing is to be decided any more
 */
export async function decideArrival(
  tx: EntityManager,
  actor: Actor,
  checkId: string,
  { version, decision, note }: DecideArrival & { version: number },
  now: Date,
): Promise<ArrivalCheckView> {
  const decidedBy = personOf(actor, 'What becomes of a visit is decided by a person.');
  const { caseId } = await viewArrivalCheck(tx, actor, checkId);
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
  const check = await tx.findOneOrFail(ArrivalCheck, { where: { id: checkId }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, check.version);
  if (check.state !== 'open') throw new WrongStateError('This check', check.state, 'open');
  await tx.update(
    ArrivalCheck,
    { id: checkId },
    { state: 'decided', decision, decisionNote: note, decidedAt: now, decidedBy, version: version + 1 },
  );
  if (decision === 'wait') await closeCall(tx, check);
  const what = decision === 'wait' ? 'The visit stays' : 'The patient is called and the visit is moved';
  const body = { appointmentId: check.appointmentId, sentence: `${what}, although its work has not arrived: ${note}` };
  await appendCaseEvent(tx, { caseId, kind: 'arrival-decided', body, actorId: decidedBy, at: now });
  await recordAudit(tx, {
    actorId: decidedBy,
    action: 'decide-arrival',
    subjectKind: 'arrival-check',
    subjectId: checkId,
    details: { decision },
    at: now,
  });
  return viewArrivalCheck(tx, actor, checkId);
}
