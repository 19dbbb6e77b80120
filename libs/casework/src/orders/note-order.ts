import { appendCaseEvent, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';

/** What happened to an order, in the history of the practice's case and in the audit trail. */
export async function noteOrder(
  tx: EntityManager,
  { userId }: Pick<Actor, 'userId'>,
  {
    id,
    caseId,
    kind,
    what,
  }: { readonly id: string; readonly caseId: string; readonly kind: string; readonly what: string },
  now: Date,
): Promise<void> {
  await appendCaseEvent(tx, { caseId, kind, body: { orderId: id, sentence: what }, actorId: userId, at: now });
  await auditOrder(tx, { userId }, { id, action: kind }, now);
}

/** A laboratory has no case: what it does to an order stands in its audit trail. */
export async function auditOrder(
  tx: EntityManager,
  { userId }: Pick<Actor, 'userId'>,
  { id, action }: { readonly id: string; readonly action: string },
  now: Date,
): Promise<void> {
  await recordAudit(tx, {
    actorId: userId,
    action,
    subjectKind: 'lab-order',
    subjectId: id,
    details: {},
    at: now,
  });
}
