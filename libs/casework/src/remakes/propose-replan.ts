import type { ReplanCasePayload, Ripple } from '@archwright/contracts';
import {
  RemakeAlert,
  ReplanProposal,
  appendCaseEvent,
  inOrganisation,
  readInOrganisation,
  uuidv7,
} from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { serviceActor, type Actor } from '../actor.js';
import { rippleView } from '../booking/ripple-view.js';
import { loadStage, type StageRecord } from '../capture/stage-record.js';
import { hashOf } from '../planning/canonical.js';
import { loadReplanBasis, type ReplanBasis } from '../planning/replan-basis.js';
import type { PlanningMeans } from '../planning/searches.js';
import { NO_CHANGE, storePlan } from '../planning/stored-plan.js';
import { areProposed } from './are-proposed.js';
import { applyRemake } from './apply-remake.js';
import { afterTheVisit } from './after-the-visit.js';
import { askForProposal } from './raise-alert.js';
import { remakeOf } from './remake.js';
import { movableVisits } from './movable-visits.js';
import { findRepairs, type Repair, type Surroundings } from './repair.js';
import { tellAboutAlert } from './tell.js';

const WEEK_MS = 7 * 86_400_000;
const SETTLE_FIRST = 'Whose work it is has to be settled by a person before anything is planned.';

/**
 * Looks for plans that repair an alert, first of all the one with the fewest moved visits, and keeps them as proposals;
 * nothing moves until a person accepts one. Safe to run again: other plans supersede the earlier proposals, the same ones
 * change nothing.
 *
 * The search takes seconds and holds no lock; what changed meanwhile is found out by the versions when it is kept.
 */
export async function proposeReplan(
  { db, searches }: PlanningMeans,
  { organisationId, alertId }: ReplanCasePayload,
  now: Date,
): Promise<void> {
  const actor = serviceActor(organisationId);
  const asked = await inOrganisation(db, organisationId, (tx) => loadQuestion(tx, actor, alertId, now));
  if (asked === null) return;
  const result =
    asked.basis === null
      ? { reason: SETTLE_FIRST }
      : await findRepairs(asked.basis, around({ db, searches }, asked.basis, now));
  await inOrganisation(db, organisationId, async (tx) => {
    const { record, alert } = await lockUndecided(tx, actor, asked.alert);
    if (alert === null) return;
    if (asked.basis !== null && asked.basis.treatmentCase.version !== record.treatmentCase.version) {
      await askForProposal(tx, alertId, organisationId, now);
      return;
    }
    // The queue may run a job twice.
    if ('repairs' in result && (await areProposed(tx, alertId, result.repairs))) return;
    await tx.update(ReplanProposal, { alertId, state: 'open' }, { state: 'superseded' });
    if ('repairs' in result) await keepProposals(tx, actor, record, alert, result.repairs, now);
    else await noteNone(tx, record, alert, result.reason, now);
  });
}

interface Question {
  readonly alert: RemakeAlert;
  /** Null when nothing may be planned yet. */
  readonly basis: ReplanBasis | null;
}

/** The case as it would be once it is sent back is read from the records themselves, then they are put back as they were. */
async function loadQuestion(tx: EntityManager, actor: Actor, alertId: string, now: Date): Promise<Question | null> {
  const seen = await tx.findOneBy(RemakeAlert, { id: alertId });
  if (seen === null) return null;
  const { record, alert } = await lockUndecided(tx, actor, seen);
  if (alert === null) return null;
  const { chain, progress, stage } = record;
  const remake = remakeOf(chain, progress, { trigger: alert.trigger, at: stage.code, arches: alert.arches });
  if (!remake.mayPlan) return { alert, basis: null };
  await tx.query('SAVEPOINT before_remake');
  await applyRemake(tx, stage.caseId, record, remake);
  const basis = await loadReplanBasis(tx, actor, stage.caseId, stage.code, now);
  await tx.query('ROLLBACK TO SAVEPOINT before_remake');
  return { alert, basis: afterTheVisit(basis) };
}

/** The alert as it is now; null once it is decided. */
async function lockUndecided(
  tx: EntityManager,
  actor: Actor,
  { id, stageId }: RemakeAlert,
): Promise<{ record: StageRecord; alert: RemakeAlert | null }> {
  const record = await loadStage(tx, actor, stageId, { lock: true });
  const alert = await tx.findOneOrFail(RemakeAlert, { where: { id }, lock: { mode: 'pessimistic_write' } });
  return { record, alert: alert.state === 'open' || alert.state === 'planned' ? alert : null };
}

function around({ db, searches }: PlanningMeans, { treatmentCase, search }: ReplanBasis, now: Date): Surroundings {
  const { organisationId, id: caseId } = treatmentCase;
  const actor = serviceActor(organisationId);
  const { nowMs, horizonWeeks, wishes } = search.request;
  const scope = { caseId, clinicIds: wishes.clinicIds, untilMs: nowMs + horizonWeeks * WEEK_MS };
  return {
    movableVisits: () => readInOrganisation(db, organisationId, (tx) => movableVisits(tx, scope, now)),
    basisOf: ({ caseId: other, stage }) =>
      readInOrganisation(db, organisationId, (tx) => loadReplanBasis(tx, actor, other, stage, now)),
    replan: (wanted, aim) => searches.replan(wanted, aim),
  };
}

async function keepProposals(
  tx: EntityManager,
  actor: Actor,
  record: StageRecord,
  alert: RemakeAlert,
  repairs: readonly Repair[],
  now: Date,
): Promise<void> {
  for (const repair of repairs) await keepProposal(tx, actor, alert, repair, now);
  await tx.update(
    RemakeAlert,
    { id: alert.id },
    { state: 'planned', noProposalReason: null, version: alert.version + 1 },
  );
  const [first] = repairs;
  if (first === undefined) throw new Error('A search that found no repair says why.');
  const { movedVisits, leastMovedVisits, parts } = first;
  const others = repairs.length - 1;
  const more =
    others === 0 ? '' : ` ${others === 1 ? 'Another way is' : `${String(others)} other ways are`} shown beside it.`;
  const sentence = `A plan that repairs the alert was found. ${labelOf(first)}.${more}`;
  const body = { alertId: alert.id, movedVisits, leastMovedVisits, otherCases: parts.length - 1, sentence };
  await appendCaseEvent(tx, { caseId: alert.caseId, kind: 'replan-proposed', body, actorId: null, at: now });
  await tellAboutAlert(tx, record, { id: alert.id, kind: 'remake-proposal' }, now);
}

async function keepProposal(
  tx: EntityManager,
  actor: Actor,
  alert: RemakeAlert,
  repair: Repair,
  now: Date,
): Promise<void> {
  const { parts, movedVisits, leastMovedVisits } = repair;
  const label = labelOf(repair);
  const ripples: Ripple[] = [];
  for (const { basis, found } of parts) {
    const change = { ...NO_CHANGE, reason: alert.reason };
    const stored = await storePlan(tx, actor, basis, { kind: 'proposal', label, found, change }, now);
    ripples.push(await rippleView(tx, basis, stored, now));
  }
  const [own] = ripples;
  if (own === undefined) throw new Error('A repair has a plan of the failing case.');
  await tx.insert(ReplanProposal, {
    id: uuidv7(),
    alertId: alert.id,
    planId: own.id,
    // One hash for every case's part: accepting books all of them.
    planHash: hashOf(ripples.map(({ planHash }) => planHash)),
    label,
    movedVisits,
    leastMovedVisits,
    otherCases: parts.length - 1,
    ripples,
    calls: ripples.flatMap(({ calls }) => calls),
    state: 'open',
    createdAt: now,
  });
}

function labelOf({ aim, movedVisits, parts }: Repair): string {
  const visits = movedVisits === 1 ? '1 visit moves' : `${String(movedVisits)} visits move`;
  if (aim === 'earliest') return `Earliest placement: ${visits}`;
  if (aim === 'as-wished') return `Closest to the wishes: ${visits}`;
  if (movedVisits === 0) return 'Nothing booked moves';
  return parts.length === 1 ? `Fewest moves: ${visits}` : `Fewest moves: ${visits}, one other case makes room`;
}

async function noteNone(
  tx: EntityManager,
  record: StageRecord,
  alert: RemakeAlert,
  reason: string,
  now: Date,
): Promise<void> {
  const change = { state: 'open' as const, noProposalReason: reason, version: alert.version + 1 };
  await tx.update(RemakeAlert, { id: alert.id }, change);
  const body = { alertId: alert.id, stage: record.stage.code };
  await appendCaseEvent(tx, { caseId: alert.caseId, kind: 'no-replan-found', body, actorId: null, at: now });
}
