import { enqueueOutbox, inOrganisation, sealAudit } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { forgetIdempotencyKeys } from '../access/idempotency-ledger.js';
import { serviceActor } from '../actor.js';
import { openReferrals } from '../aftercare/open-referrals.js';
import { lookForArrivals } from '../arrivals/look-for-arrivals.js';
import { expireHolds } from '../booking/end-hold.js';
import { settleOrders } from '../orders/settle-orders.js';
import { startEdition } from '../rechecks/start-edition.js';
import { startNight } from '../screening/start-night.js';
import { escalateQuestions } from '../lab/questions.js';

/** What should have happened this long ago, and is on no queue's way, was forgotten. Project default. */
const GRACE_MS = 60_000;
/** Dispatched rows are kept this long, to be looked at. Project default. */
const KEPT_MS = 7 * 86_400_000;
const AT_ONCE = 500;

/** Work that our own tables say is still to be done, as the jobs that do it. */
const UNDONE = `
  SELECT 'deliver-reminder' AS kind, jsonb_build_object('organisationId', organisation_id, 'reminderId', id) AS payload
  FROM reminder WHERE state = 'scheduled' AND due_at <= $1
  UNION ALL
  SELECT 'deliver-notice', jsonb_build_object('organisationId', organisation_id, 'noticeId', id)
  FROM notice WHERE state = 'scheduled' AND due_at <= $1
  UNION ALL
  SELECT 'check-stage', jsonb_build_object('organisationId', organisation_id, 'stageId', stage_id, 'captureId', id)
  FROM capture WHERE checked_at IS NULL AND superseded_at IS NULL AND recorded_at <= $1
  UNION ALL
  SELECT 'screen-capture', jsonb_build_object('organisationId', organisation_id, 'captureId', id)
  FROM capture WHERE screened_at IS NULL AND superseded_at IS NULL AND checked_at <= $1
  UNION ALL
  SELECT 'screen-series', jsonb_build_object('organisationId', organisation_id, 'nightId', id)
  FROM screening_night WHERE finished_at IS NULL AND started_at <= $1
  UNION ALL
  SELECT 'search-workload', jsonb_build_object('organisationId', organisation_id, 'runId', id)
  FROM workload_run WHERE state IN ('asked', 'running') AND asked_at <= $1
  UNION ALL
  SELECT 'recheck-stages', jsonb_build_object('organisationId', organisation_id, 'editionId', id)
  FROM check_edition WHERE finished_at IS NULL AND started_at <= $1
  UNION ALL
  SELECT 'replan-case', jsonb_build_object('organisationId', organisation_id, 'alertId', id)
  FROM remake_alert a WHERE state = 'open' AND no_proposal_reason IS NULL AND raised_at <= $1
    AND NOT EXISTS (SELECT FROM replan_proposal p WHERE p.alert_id = a.id AND p.state = 'open')
  UNION ALL
  SELECT 'repair-disturbance', jsonb_build_object('organisationId', organisation_id, 'disturbanceId', id)
  FROM disturbance d WHERE state = 'open' AND no_proposal_reason IS NULL AND entered_at <= $1`;

type Task = (tx: EntityManager, organisationId: string, now: Date) => Promise<number>;

/** Every task may run twice at once, and in any order. */
const TASKS = {
  recreated: (tx, _, now) => recreateLost(tx, now),
  expired: (tx, organisationId, now) => expireHolds(tx, serviceActor(organisationId), now),
  escalated: (tx, _, now) => escalateQuestions(tx, now),
  referred: (tx, _, now) => openReferrals(tx, now),
  orders: (tx, organisationId, now) => settleOrders(tx, organisationId, now),
  arrivals: (tx, _, now) => lookForArrivals(tx, now),
  editions: (tx, organisationId, now) => startEdition(tx, organisationId, now),
  nights: (tx, organisationId, now) => startNight(tx, organisationId, now),
  sealed: (tx, _, now) => sealAudit(tx, now),
  cleared: (tx, _, now) => clearOutbox(tx, now),
  forgotten: (tx, _, now) => forgetIdempotencyKeys(tx, now),
} satisfies Record<string, Task>;

/** How many each task dealt with. */
export type Swept = Readonly<Record<keyof typeof TASKS, number>>;

/**
 * Looks after one organisation: re-creates what a lost queue forgot, ends holds that have run out, escalates questions
 * nobody answered, opens referrals for sores that do not heal, takes in what laboratories answered, asks about work
 * that has not arrived for a visit, has everything judged again after a rule changed, starts the night's screening,
 * seals the audit trail, forgets kept answers. Each task in its own transaction, so that one that fails keeps none
 * from its turn.
 *
 * @throws {AggregateError} after all had their turn, with what failed
 */
export async function sweep(db: DataSource, organisationId: string, now: Date): Promise<Swept> {
  const swept = {
    recreated: 0,
    expired: 0,
    escalated: 0,
    referred: 0,
    orders: 0,
    arrivals: 0,
    editions: 0,
    nights: 0,
    sealed: 0,
    cleared: 0,
    forgotten: 0,
  };
  const failures: unknown[] = [];
  for (const name of Object.keys(TASKS) as (keyof typeof TASKS)[]) {
    try {
      swept[name] = await inOrganisation(db, organisationId, (tx) => TASKS[name](tx, organisationId, now));
    } catch (error) {
      failures.push(error);
    }
  }
  if (failures.length > 0) throw new AggregateError(failures, `${String(failures.length)} sweeps failed`);
  return swept;
}

async function clearOutbox(tx: EntityManager, now: Date): Promise<number> {
  const [, cleared]: [unknown, number] = await tx.query('DELETE FROM outbox WHERE dispatched_at < $1', [
    new Date(now.getTime() - KEPT_MS),
  ]);
  return cleared;
}

/**
 * Undone work that neither waits in the outbox nor was given to a queue within the grace time. The new row replaces the
 * old one: while a mail server is away for hours, the outbox does not grow.
 */
async function recreateLost(tx: EntityManager, now: Date): Promise<number> {
  const lost: { kind: string; payload: Record<string, string> }[] = await tx.query(
    `WITH lost AS (
       SELECT u.kind, u.payload FROM (${UNDONE}) u WHERE NOT EXISTS (
         SELECT FROM outbox o WHERE o.kind = u.kind AND o.payload = u.payload
           AND (o.dispatched_at > $1 OR o.dispatched_at IS NULL AND o.due_at <= $2))
       LIMIT ${String(AT_ONCE)}),
     replaced AS (
       DELETE FROM outbox o USING lost l WHERE o.kind = l.kind AND o.payload = l.payload AND o.dispatched_at IS NOT NULL)
     SELECT kind, payload FROM lost`,
    [new Date(now.getTime() - GRACE_MS), now],
  );
  for (const { kind, payload } of lost) await enqueueOutbox(tx, kind, payload, now);
  return lost.length;
}
