import { appendCaseEvent, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** One thing that happened after placement. */
interface Happening {
  readonly caseId: string;
  readonly kind: string;
  readonly subjectKind: 'sore-spot' | 'adjustment' | 'referral-task' | 'recall';
  readonly subjectId: string;
  /** As the case's history tells it; names no person. */
  readonly sentence: string;
  /** Null when the background service acts. */
  readonly actorId: string | null;
}

/** Writes it into the case's history and the audit trail. */
export async function noteAftercare(tx: EntityManager, happening: Happening, at: Date): Promise<void> {
  const { caseId, kind, subjectKind, subjectId, sentence, actorId } = happening;
  await appendCaseEvent(tx, { caseId, kind, body: { subjectId, sentence }, actorId, at });
  const subject = { subjectKind, subjectId };
  await recordAudit(tx, { actorId, action: kind, ...subject, details: { caseId }, at });
}
