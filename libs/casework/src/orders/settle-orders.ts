import { LabExchange, LabStep, SentOrder, TreatmentCase } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { lookAgain } from '../arrivals/look-again.js';
import { raiseCaseVersion } from '../booking/settle.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';
import { noteOrder } from './note-order.js';
import { freeBenchesOfWithdrawn, takeBackSteps, withdrawIdleOrders } from './withdraw-order.js';

/**
 * Brings both sides of orders up to each other, from each organisation's own tables: a practice's cases take in what the
 * laboratory answered, orders that nothing waits for are withdrawn, a laboratory frees what was taken back.
 *
 * @returns how many orders changed something here
 */
export async function settleOrders(tx: EntityManager, organisationId: string, now: Date): Promise<number> {
  const withdrawn = await withdrawIdleOrders(tx, organisationId, now);
  const taken = await takeAnswers(tx, organisationId, now);
  return withdrawn + taken + (await freeBenchesOfWithdrawn(tx, organisationId));
}

async function takeAnswers(tx: EntityManager, organisationId: string, now: Date): Promise<number> {
  const answered: { id: string; caseId: string }[] = await tx.query(
    `SELECT x.id, o.case_id AS "caseId" FROM lab_exchange x JOIN sent_order o ON o.id = x.id
     WHERE x.practice_organisation_id = $1 AND x.version > o.taken_version ORDER BY o.case_id, x.id`,
    [organisationId],
  );
  for (const { id, caseId } of answered) {
    await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
    const sent = await tx.findOneOrFail(SentOrder, { where: { id }, lock: { mode: 'pessimistic_write' } });
    const order = await tx.findOneByOrFail(LabExchange, { id });
    if (order.version > sent.takenVersion) await take(tx, sent, order, now);
  }
  return answered.length;
}

async function take(tx: EntityManager, { id, caseId }: SentOrder, order: LabExchange, now: Date): Promise<void> {
  await tx.update(SentOrder, { id }, { takenVersion: order.version });
  const tell = (kind: string, what: string) => noteOrder(tx, { userId: null }, { id, caseId, kind, what }, now);
  switch (order.state) {
    case 'accepted': {
      await setSteps(tx, id, { state: 'started', endsAt: order.promisedAt, stateReason: null, startedAt: now });
      const promised = order.promisedAt?.toISOString() ?? '';
      const isLate = order.promisedAt !== null && order.promisedAt > order.neededBy;
      const late = isLate ? ' That is later than it is needed; the clinic was told.' : '';
      await tell('lab-order-accepted', `The laboratory accepted the order for ${promised}.${late}`);
      if (isLate) await tellClinic(tx, order.practiceOrganisationId, { caseId, kind: 'lab-order-late' }, now);
      break;
    }
    case 'declined':
      await takeBackSteps(tx, { id, caseId });
      await tell('lab-order-declined', `The laboratory declined the order: ${order.declineReason ?? ''}`);
      await tellClinic(tx, order.practiceOrganisationId, { caseId, kind: 'lab-order-declined' }, now);
      break;
    case 'finished':
      await setSteps(tx, id, { state: 'finished', finishedAt: now });
      await tell('lab-order-finished', 'The laboratory finished the order.');
      break;
    case 'ordered':
    case 'withdrawn':
      return;
  }
  await raiseCaseVersion(tx, caseId);
  await lookAgain(tx, [caseId], now);
}

type StepChange = Partial<Pick<LabStep, 'state' | 'stateReason' | 'endsAt' | 'startedAt' | 'finishedAt'>>;

async function setSteps(tx: EntityManager, orderId: string, change: StepChange): Promise<void> {
  await tx.update(
    LabStep,
    { orderId, state: In(['planned', 'ready', 'started', 'paused']) },
    { ...change, version: () => 'version + 1' },
  );
}

/** A refusal or a late date needs another way: the front desk decides with the patient. */
async function tellClinic(
  tx: EntityManager,
  organisationId: string,
  { caseId, kind }: { readonly caseId: string; readonly kind: string },
  now: Date,
): Promise<void> {
  const { homeClinicId } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const about = { kind, caseId, alertId: null };
  await notifyColleagues(tx, organisationId, about, { recipient: 'clinic', clinicId: homeClinicId }, now);
}
