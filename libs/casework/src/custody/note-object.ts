import { appendCaseEvent, recordAudit, type CustodyObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';

/** What happened to an object, in the history of its case and in the audit trail. */
export async function noteObject(
  tx: EntityManager,
  { userId }: Actor,
  { id, caseId, code }: Pick<CustodyObject, 'id' | 'caseId' | 'code'>,
  { kind, action, what }: { readonly kind: string; readonly action: string; readonly what: string },
  now: Date,
): Promise<void> {
  const body = { objectId: id, sentence: `Object ${code} ${what}` };
  await appendCaseEvent(tx, { caseId, kind, body, actorId: userId, at: now });
  await recordAudit(tx, {
    actorId: userId,
    action,
    subjectKind: 'custody-object',
    subjectId: id,
    details: { code },
    at: now,
  });
}
