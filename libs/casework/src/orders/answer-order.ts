import type { LabOrderAction } from '@archwright/contracts';
import { RequestInvalidError, type FieldProblem } from '@archwright/platform';
import { BenchPlace, LabExchange, ReceivedOrder, claim, release } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { WrongStateError } from '../errors.js';
import { auditOrder } from './note-order.js';

type Answer = Exclude<LabOrderAction, { action: 'withdraw' }>;

const FROM: Readonly<Record<Answer['action'], readonly LabExchange['state'][]>> = {
  accept: ['ordered'],
  promise: ['accepted'],
  decline: ['ordered', 'accepted'],
  finish: ['accepted'],
};

/**
 * The laboratory's word on an order, in its own transaction and its own tables: the bench time it takes is claimed from
 * its own calendar, where all of its other work stands too. The practice's case learns of it from the order.
 *
 * @throws {WrongStateError} when the order's state does not allow it
 * @throws {OccupancyConflictError} when a bench is taken; nothing is accepted then
 */
export async function answerOrder(
  tx: EntityManager,
  actor: Actor & { readonly userId: string },
  order: LabExchange,
  given: Answer,
  now: Date,
): Promise<void> {
  const accepted = FROM[given.action];
  if (!accepted.includes(order.state)) throw new WrongStateError('The order', order.state, accepted.join(' or '));
  const change = await changeOf(tx, actor, order, given, now);
  await tx.update(LabExchange, { id: order.id }, { ...change, version: order.version + 1 });
  await auditOrder(tx, actor, { id: order.id, action: `${given.action}-lab-order` }, now);
}

async function changeOf(
  tx: EntityManager,
  { userId }: Actor & { readonly userId: string },
  { id }: LabExchange,
  given: Answer,
  now: Date,
): Promise<Partial<LabExchange>> {
  switch (given.action) {
    case 'accept':
      requireAhead(given.promisedAt, now);
      await tx.insert(ReceivedOrder, { id, acceptedAt: now, acceptedBy: userId });
      await takeBenches(tx, id, given.benchTimes, now);
      return { state: 'accepted', promisedAt: new Date(given.promisedAt) };
    case 'promise':
      requireAhead(given.promisedAt, now);
      return { promisedAt: new Date(given.promisedAt) };
    case 'decline':
      await release(tx, { receivedOrderIds: [id] });
      return { state: 'declined', declineReason: given.reason };
    case 'finish':
      return { state: 'finished' };
  }
}

function requireAhead(promisedAt: string, now: Date): void {
  if (new Date(promisedAt) > now) return;
  const accepted = `an instant after ${now.toISOString()}`;
  throw new RequestInvalidError([{ path: 'promisedAt', problem: 'has passed', accepted }]);
}

async function takeBenches(
  tx: EntityManager,
  receivedOrderId: string,
  times: Extract<Answer, { action: 'accept' }>['benchTimes'],
  now: Date,
): Promise<void> {
  const places = await tx.findBy(BenchPlace, { id: In(times.map(({ placeId }) => placeId)) });
  const unknown = times.flatMap(({ placeId }, index): FieldProblem[] =>
    places.some(({ id }) => id === placeId)
      ? []
      : [{ path: `benchTimes.${String(index)}.placeId`, problem: 'is no bench here', accepted: 'a place of yours' }],
  );
  if (unknown.length > 0) throw new RequestInvalidError(unknown);
  const requests = times.map(({ placeId, startsAt, endsAt }) => ({
    resourceId: placeId,
    startsAt: new Date(startsAt),
    endsAt: new Date(endsAt),
    purpose: 'lab' as const,
    receivedOrderId,
  }));
  await claim(tx, requests, now);
}
