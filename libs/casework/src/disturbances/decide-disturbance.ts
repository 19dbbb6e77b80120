import type { AcceptRepair, DecideDisturbance, Ripple } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { DisturbanceProposal, appendCaseEvent } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { bookTogether } from '../booking/book-together.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { PlanStaleError, requireHash } from '../planning/stored-plan.js';
import { closeTime, type InTheWay } from './close-time.js';
import { isUndecided, loadDisturbance, type DisturbanceRecord } from './disturbance-record.js';
import { askForRepairs } from './enter-disturbance.js';
import { settle } from './settle.js';

/**
 * Closes the time and books exactly the proposed plans of all cases: all of it in one transaction, or nothing.
 *
 * @throws {PlanStaleError} when another proposal is meant, a case or its time has changed since, or somebody was booked
 * into the lost time meanwhile
 */
export async function acceptRepair(
  tx: EntityManager,
  actor: Actor,
  disturbanceId: string,
  { version, proposalId, planHash }: AcceptRepair & { version: number },
  now: Date,
): Promise<void> {
  const decidedBy = personOf(actor, 'A repair is accepted by a person.');
  const record = await lockUndecided(tx, actor, disturbanceId, version);
  const proposal = await tx.findOneBy(DisturbanceProposal, { id: proposalId, disturbanceId });
  if (proposal === null) throw new RecordNotFoundError('proposal', proposalId);
  if (proposal.state !== 'open') throw new WrongStateError('The proposal', proposal.state, 'open');
  requireHash(proposal, planHash);
  // Written by `proposeRepairs` alone.
  const ripples = proposal.ripples as Ripple[];
  await bookTogether(
    tx,
    actor,
    ripples.map(({ id }) => id),
    now,
  );
  const collisions = await closeTime(tx, toClose(record), now);
  await requireLeftAlone(tx, collisions, proposal.leftCaseIds, now);
  await tx.update(DisturbanceProposal, { id: proposalId }, { state: 'accepted' });
  for (const { caseId } of ripples) {
    const body = { disturbanceId };
    await appendCaseEvent(tx, { caseId, kind: 'disturbance-repaired', body, actorId: decidedBy, at: now });
  }
  await settle(tx, record.row, { state: 'accepted', decidedBy, details: { proposalId, planHash } }, now);
}

/**
 * Closes the time and leaves every visit where it is (`keep`), or takes the entry back (`withdraw`).
 *
 * @throws {WrongStateError} when it is decided already, or is to be taken back while its closure is in force
 */
export async function decideDisturbance(
  tx: EntityManager,
  actor: Actor,
  disturbanceId: string,
  { version, decision }: DecideDisturbance & { version: number },
  now: Date,
): Promise<void> {
  const decidedBy = personOf(actor, 'What becomes of it is decided by a person.');
  const record = await lockUndecided(tx, actor, disturbanceId, version);
  if (decision === 'keep') await closeTime(tx, toClose(record), now);
  else if (record.row.closureId !== null)
    throw new WrongStateError('The time', 'closed already', 'taking the closure away, which withdraws this');
  const state = decision === 'keep' ? ('kept' as const) : ('withdrawn' as const);
  await settle(tx, record.row, { state, decidedBy, details: {} }, now);
}

/** After a proposal turned out to be stale: in a transaction of its own, since the refused one left nothing. */
export async function renewRepairs(tx: EntityManager, actor: Actor, disturbanceId: string, now: Date): Promise<void> {
  await askForRepairs(tx, disturbanceId, actor.organisationId, now);
}

const toClose = ({ loss, row: { closureId } }: DisturbanceRecord) => ({ loss, closureId });

async function lockUndecided(
  tx: EntityManager,
  actor: Actor,
  disturbanceId: string,
  version: number,
): Promise<DisturbanceRecord> {
  const record = await loadDisturbance(tx, actor, disturbanceId, { lock: true });
  requireVersion(version, record.row.version);
  if (!isUndecided(record.row)) throw new WrongStateError('The disturbance', record.row.state, 'open or planned');
  return record;
}

/**
 * What has begun when the time is lost goes on, and no proposal speaks of it.
 *
 * @throws {PlanStaleError} for a visit or work to come in the lost time that the proposal knew nothing of
 */
async function requireLeftAlone(
  tx: EntityManager,
  collisions: readonly InTheWay[],
  leftCaseIds: readonly string[],
  now: Date,
): Promise<void> {
  const rows: unknown[] = await tx.query(
    `SELECT FROM appointment a JOIN appointment_stage x ON x.appointment_id = a.id JOIN stage s ON s.id = x.stage_id
       WHERE a.id = ANY ($1::uuid[]) AND a.starts_at > $4 AND a.state IN ('held', 'provisional', 'booked')
         AND s.case_id <> ALL ($3::uuid[])
     UNION ALL SELECT FROM lab_step l
       WHERE l.id = ANY ($2::uuid[]) AND l.state IN ('planned', 'ready') AND l.case_id <> ALL ($3::uuid[])`,
    [
      collisions.flatMap(({ appointmentId }) => appointmentId ?? []),
      collisions.flatMap(({ labStepId }) => labStepId ?? []),
      leftCaseIds,
      now,
    ],
  );
  if (rows.length > 0) throw new PlanStaleError('Something was booked into this time since the plan was computed.');
}
