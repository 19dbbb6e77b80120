import type { LabOrderAction, LabOrderView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { LabExchange } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { NotYoursError } from '../errors.js';
import { answerOrder } from './answer-order.js';
import { viewOrder } from './order-view.js';
import { withdrawOrder } from './withdraw-order.js';

/**
 * What either party does with an order: the laboratory answers and finishes it, the practice takes it back.
 *
 * @throws {NotYoursError} for what is the other party's to do
 * @throws {WrongStateError} when the order's state does not allow it
 */
export async function actOnOrder(
  tx: EntityManager,
  actor: Actor,
  orderId: string,
  { version, ...given }: LabOrderAction & { version: number },
  now: Date,
): Promise<LabOrderView> {
  const userId = personOf(actor, 'An order is handled by a person.');
  await viewOrder(tx, actor, orderId);
  const order = await tx.findOneOrFail(LabExchange, { where: { id: orderId }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, order.version);
  const isLaboratory = order.laboratoryOrganisationId === actor.organisationId;
  if (given.action === 'withdraw') {
    if (isLaboratory) throw new NotYoursError('An order is withdrawn by the practice that sent it.');
    await withdrawOrder(tx, actor, order, given.reason, now);
  } else {
    if (!isLaboratory) throw new NotYoursError('An order is answered by the laboratory that it was sent to.');
    await answerOrder(tx, { ...actor, userId }, order, given, now);
  }
  return viewOrder(tx, actor, orderId);
}
