import type { AcceptProposal, Ripple } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { CustodyObject, RemakeAlert, ReplanProposal, appendCaseEvent, recordAudit } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { applyPlan } from '../booking/apply-plan.js';
import { kindOfObject } from '../capture/custody-kind.js';
import { personOf } from '../capture/person.js';
import { loadStage, type StageRecord } from '../capture/stage-record.js';
import { loadPlan, requireHash } from '../planning/stored-plan.js';
import { applyRemake } from './apply-remake.js';
import { askForProposal } from './raise-alert.js';
import { remakeOf, type Remake } from './remake.js';
import { tellAboutAlert } from './tell.js';

/**
 * Sends the case back and books exactly the proposed plan, together with the other case's when one makes room: all of it
 * in one transaction, or nothing.
 *
 * @throws {PlanStaleError} when another plan is meant, or a case or its time has changed since the proposal
 */
export async function acceptProposal(
  tx: EntityManager,
  actor: Actor,
  alertId: string,
  { version, proposalId, planHash }: AcceptProposal & { version: number },
  now: Date,
): Promise<void> {
  const decidedBy = personOf(actor, 'A proposal is accepted by a person.');
  const { alert, record } = await lockAlert(tx, actor, alertId, version);
  const proposal = await tx.findOneBy(ReplanProposal, { id: proposalId, alertId });
  if (proposal === null) throw new RecordNotFoundError('proposal', proposalId);
  if (proposal.state !== 'open') throw new WrongStateError('The proposal', proposal.state, 'open');
  requireHash(proposal, planHash);
  await bookAll(tx, actor, { alert, record, proposal }, now);
  await tx.update(ReplanProposal, { alertId, state: 'open' }, { state: 'superseded' });
  await tx.update(ReplanProposal, { id: proposalId }, { state: 'accepted' });
  const decision = { state: 'accepted' as const, decidedAt: now, decidedBy, version: alert.version + 1 };
  await tx.update(RemakeAlert, { id: alertId }, decision);
  const body = { alertId, proposalId, planHash, otherCases: proposal.otherCases };
  await appendCaseEvent(tx, { caseId: alert.caseId, kind: 'replan-accepted', body, actorId: decidedBy, at: now });
  await tellAboutAlert(tx, record, { id: alertId, kind: 'remake-accepted' }, now);
  await recordAudit(tx, {
    actorId: decidedBy,
    action: 'accept-proposal',
    subjectKind: 'remake-alert',
    subjectId: alertId,
    details: { proposalId, planHash },
    at: now,
  });
}

/** After a proposal turned out to be stale: a fresh one is looked for. In a transaction of its own, since the refused one left nothing. */
export async function renewProposal(tx: EntityManager, actor: Actor, alertId: string, now: Date): Promise<void> {
  await askForProposal(tx, alertId, actor.organisationId, now);
}

/** An undecided alert of the actor's clinics, kept from everybody else until the transaction ends. */
export async function lockAlert(
  tx: EntityManager,
  actor: Actor,
  alertId: string,
  version: number,
): Promise<{ alert: RemakeAlert; record: StageRecord }> {
  const seen = await tx.findOneBy(RemakeAlert, { id: alertId });
  if (seen === null) throw new RecordNotFoundError('alert', alertId);
  const record = await loadStage(tx, actor, seen.stageId, { lock: true });
  const alert = await tx.findOneOrFail(RemakeAlert, { where: { id: alertId }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, alert.version);
  if (alert.state !== 'open' && alert.state !== 'planned') {
    throw new WrongStateError('The alert', alert.state, 'open or planned');
  }
  return { alert, record };
}

/** The case that makes room goes first, so that its time is free when the other one takes it. */
async function bookAll(
  tx: EntityManager,
  actor: Actor,
  { alert, record, proposal }: { alert: RemakeAlert; record: StageRecord; proposal: ReplanProposal },
  now: Date,
): Promise<void> {
  const { chain, progress, stage } = record;
  const remake = remakeOf(chain, progress, { trigger: alert.trigger, at: stage.code, arches: alert.arches });
  // Written by `proposeReplan` alone.
  const ripples = proposal.ripples as Ripple[];
  for (const { id } of ripples.filter(({ caseId }) => caseId !== alert.caseId)) {
    await applyPlan(tx, actor, await loadPlan(tx, id, ['proposal']), now);
  }
  await applyRemake(tx, stage.caseId, record, remake);
  await discardObjects(tx, stage.caseId, remake);
  await applyPlan(tx, actor, await loadPlan(tx, proposal.planId, ['proposal']), now);
}

/** What was made before the way back is discarded, wherever it is now. */
async function discardObjects(tx: EntityManager, caseId: string, { discards }: Remake): Promise<void> {
  for (const { object, title, arches } of discards) {
    const kept = await tx.findBy(CustodyObject, {
      caseId,
      kind: kindOfObject(object),
      state: In(['in-use', 'packed', 'in-transit', 'quarantined', 'expected']),
    });
    const ids = kept.filter(({ arch }) => arch === null || arches.includes(arch)).map(({ id }) => id);
    if (ids.length === 0) continue;
    await tx.update(
      CustodyObject,
      { id: In(ids) },
      { state: 'discarded', stateReason: `${title}: made again`, version: () => 'version + 1' },
    );
  }
}
