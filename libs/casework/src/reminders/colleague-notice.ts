import { messageIdOf } from '@archwright/notices';
import { Notice, enqueueOutbox, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { messageDomainOf } from './message-domain.js';

/** Who is told that a case waits for them: one clinician, a clinic's front desk, or a laboratory's people. */
export type Colleagues =
  | { readonly recipient: 'clinician'; readonly userId: string }
  | { readonly recipient: 'clinic'; readonly clinicId: string }
  | { readonly recipient: 'laboratory'; readonly laboratoryId: string };

/** Tells colleagues by mail that something on a case is to be decided or to pause; what it is stands on their screens. */
export async function notifyColleagues(
  tx: EntityManager,
  organisationId: string,
  about: { readonly kind: string; readonly caseId: string; readonly alertId: string | null },
  colleagues: Colleagues,
  now: Date,
): Promise<void> {
  const id = uuidv7();
  await tx.insert(Notice, {
    ...about,
    ...colleagues,
    id,
    messageId: messageIdOf(id, messageDomainOf(organisationId)),
    state: 'scheduled',
    dueAt: now,
    createdAt: now,
  });
  await enqueueOutbox(tx, 'deliver-notice', { organisationId, noticeId: id }, now);
}
