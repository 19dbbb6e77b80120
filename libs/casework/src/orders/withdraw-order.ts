import { LabExchange, LabStep, SentOrder, release } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { unplanSteps } from '../booking/place-lab-work.js';
import { raiseCaseVersion } from '../booking/settle.js';
import { WrongStateError } from '../errors.js';
import { noteOrder } from './note-order.js';

const LIVE: readonly LabExchange['state'][] = ['ordered', 'accepted'];

/**
 * Takes an order back: its steps wait to be planned again. The laboratory sees it, and its sweep frees its benches.
 *
 * @throws {WrongStateError} for an order that is answered in the negative, done or withdrawn already
 */
export async function withdrawOrder(
  tx: EntityManager,
  actor: Pick<Actor, 'userId'>,
  order: LabExchange,
  reason: string,
  now: Date,
): Promise<void> {
  if (!LIVE.includes(order.state)) throw new WrongStateError('The order', order.state, LIVE.join(' or '));
  const { id } = order;
  const { caseId } = await tx.findOneByOrFail(SentOrder, { id });
  const version = order.version + 1;
  await tx.update(LabExchange, { id }, { state: 'withdrawn', version });
  await tx.update(SentOrder, { id }, { takenVersion: version });
  await noteOrder(
    tx,
    actor,
    { id, caseId, kind: 'lab-order-withdrawn', what: `An order was withdrawn: ${reason}` },
    now,
  );
  await takeBackSteps(tx, { id, caseId });
}

/** What is not finished waits to be planned again; what was discarded meanwhile stays so. */
export async function takeBackSteps(
  tx: EntityManager,
  { id, caseId }: { readonly id: string; readonly caseId: string },
): Promise<void> {
  const steps = await tx.findBy(LabStep, { orderId: id, state: In(['planned', 'ready', 'started', 'paused']) });
  await unplanSteps(
    tx,
    steps.map((step) => step.id),
  );
  const clean = { orderId: null, stateReason: null, startedAt: null };
  await tx.update(LabStep, { id: In(steps.map((step) => step.id)) }, clean);
  await raiseCaseVersion(tx, caseId);
}

/** Orders that no step of a case waits for any more, since it was stopped or goes back: nobody should go on making them. */
export async function withdrawIdleOrders(tx: EntityManager, organisationId: string, now: Date): Promise<number> {
  const idle: { id: string; caseId: string }[] = await tx.query(
    `SELECT x.id, o.case_id AS "caseId" FROM lab_exchange x JOIN sent_order o ON o.id = x.id
     WHERE x.practice_organisation_id = $1 AND x.state IN ('ordered', 'accepted')
       AND NOT EXISTS (SELECT FROM lab_step s WHERE s.order_id = x.id AND s.state NOT IN ('discarded', 'rejected'))
     ORDER BY o.case_id, x.id`,
    [organisationId],
  );
  for (const { id, caseId } of idle) {
    await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
    const order = await tx.findOneOrFail(LabExchange, { where: { id }, lock: { mode: 'pessimistic_write' } });
    if (LIVE.includes(order.state))
      await withdrawOrder(tx, { userId: null }, order, 'the work is not needed any more', now);
  }
  return idle.length;
}

/** At the laboratory: benches kept for orders that the practice took back. */
export async function freeBenchesOfWithdrawn(tx: EntityManager, organisationId: string): Promise<number> {
  const withdrawn: { id: string }[] = await tx.query(
    `SELECT DISTINCT x.id FROM lab_exchange x JOIN occupancy o ON o.received_order_id = x.id
     WHERE x.laboratory_organisation_id = $1 AND x.state = 'withdrawn'`,
    [organisationId],
  );
  if (withdrawn.length > 0) await release(tx, { receivedOrderIds: withdrawn.map(({ id }) => id) });
  return withdrawn.length;
}
