import type { DismissAlert, OpenRemakeAlert } from '@archwright/contracts';
import { RemakeAlert, ReplanProposal, Stage, appendCaseEvent, recordAudit } from '@archwright/records';
import { In, Not, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { answerPauses } from '../capture/late-finding.js';
import { personOf } from '../capture/person.js';
import { loadStage } from '../capture/stage-record.js';
import { requireCase } from '../cases/case-access.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { lockAlert } from './accept-proposal.js';
import { openAlert } from './raise-alert.js';
import { remakeOf } from './remake.js';

/**
 * A person's own finding that something has to be made again. It also answers a late finding that waits at that stage.
 *
 * @returns the alert's id
 * @throws {WrongStateError} when the stage has an undecided alert already
 */
export async function openAlertByPerson(
  tx: EntityManager,
  actor: Actor,
  { caseId, stage: code, trigger, reason }: OpenRemakeAlert,
  now: Date,
): Promise<string> {
  const raisedBy = personOf(actor, 'An alert is opened by a person; a check raises its own.');
  await requireCase(tx, actor, caseId);
  const row = await tx.findOne(Stage, {
    where: { caseId, code, state: Not(In(['repeated', 'dropped'])) },
    order: { round: 'DESC' },
  });
  if (row === null) throw new RecordNotFoundError('stage', code);
  const record = await loadStage(tx, { ...actor, role: 'service' }, row.id, { lock: true });
  if (await tx.existsBy(RemakeAlert, { stageId: row.id, state: In(['open', 'planned']) })) {
    throw new WrongStateError(
      `The alert of stage ${code}`,
      'undecided',
      'one that is decided, before another is opened',
    );
  }
  const remake = remakeOf(record.chain, record.progress, { trigger, at: code, arches: record.stage.arches });
  await answerPauses(tx, record, { state: 'return', answer: reason, answeredBy: raisedBy }, now);
  const id = await openAlert(tx, record, { remake, reason, verdictId: null, raisedBy }, now);
  await audit(tx, { actorId: raisedBy, action: 'open-alert', alertId: id, details: { trigger }, at: now });
  return id;
}

/** Nothing is made again; why stays on the record. */
export async function dismissAlert(
  tx: EntityManager,
  actor: Actor,
  alertId: string,
  { version, reason }: DismissAlert & { version: number },
  now: Date,
): Promise<void> {
  const decidedBy = personOf(actor, 'An alert is dismissed by a person.');
  const { alert } = await lockAlert(tx, actor, alertId, version);
  await tx.update(ReplanProposal, { alertId, state: 'open' }, { state: 'superseded' });
  const decision = { decidedAt: now, decidedBy, decisionReason: reason, version: alert.version + 1 };
  await tx.update(RemakeAlert, { id: alertId }, { state: 'dismissed', ...decision });
  const body = { alertId };
  await appendCaseEvent(tx, {
    caseId: alert.caseId,
    kind: 'remake-alert-dismissed',
    body,
    actorId: decidedBy,
    at: now,
  });
  await audit(tx, { actorId: decidedBy, action: 'dismiss-alert', alertId, details: {}, at: now });
}

async function audit(
  tx: EntityManager,
  {
    alertId,
    ...entry
  }: { actorId: string; action: string; alertId: string; details: Record<string, string>; at: Date },
): Promise<void> {
  await recordAudit(tx, { ...entry, subjectKind: 'remake-alert', subjectId: alertId });
}
