import type { DecideRecall, RecallView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { Recall, Stage } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { followUpWithoutVisit } from './follow-ups.js';
import { noteAftercare } from './note.js';
import { recallsOfCase } from './recall-list.js';
import { lockTreatedCase, requireBetween } from './treated-case.js';

const FAR_OFF = '9999-12-31';

/**
 * A check that is due and not booked is declined, was made otherwise (such as on the telephone), or gets another date. A
 * recall that is not made by a visit is followed by the next one.
 *
 * @throws {WrongStateError} when it is booked or settled
 */
export async function decideRecall(
  tx: EntityManager,
  actor: Actor,
  recallId: string,
  { version, ...body }: DecideRecall & { version: number },
  now: Date,
): Promise<RecallView> {
  const actorId = personOf(actor, 'A recall is settled by a person.');
  const seen = await tx.findOneBy(Recall, { id: recallId });
  if (seen === null) throw new RecordNotFoundError('recall', recallId);
  const { today } = await lockTreatedCase(tx, actor, seen.caseId, now);
  const recall = await tx.findOneByOrFail(Recall, { id: recallId });
  requireVersion(version, recall.version);
  if (recall.state !== 'due') throw new WrongStateError('This recall', recall.state, 'due and not booked');
  if (body.decision === 'put-off') await putOff(tx, recall, body, today);
  else await settle(tx, recall, body);
  const sentence = SENTENCES[body.decision];
  const subject = { subjectKind: 'recall', subjectId: recallId } as const;
  await noteAftercare(tx, { caseId: recall.caseId, kind: 'recall-decided', ...subject, sentence, actorId }, now);
  const view = (await recallsOfCase(tx, recall.caseId)).find(({ id }) => id === recallId);
  if (view === undefined) throw new Error('A recall is among those of its case.');
  return view;
}

const SENTENCES: Readonly<Record<DecideRecall['decision'], string>> = {
  declined: 'A check that was due was declined.',
  done: 'A check that was due was made without a visit.',
  'put-off': 'A check is due on another date.',
};

type Given<Decision> = Extract<DecideRecall, { readonly decision: Decision }>;

async function settle(
  tx: EntityManager,
  recall: Recall,
  { decision, reason }: Given<'declined' | 'done'>,
): Promise<void> {
  await tx.update(Recall, { id: recall.id }, { state: decision, reason, version: recall.version + 1 });
  await followUpWithoutVisit(tx, recall);
}

async function putOff(
  tx: EntityManager,
  { id, caseId, kind, version }: Recall,
  { dueOn, reason }: Given<'put-off'>,
  today: string,
): Promise<void> {
  requireBetween('dueOn', dueOn, today, FAR_OFF);
  await tx.update(Recall, { id }, { dueOn, reason, version: version + 1 });
  await tx.update(Stage, { caseId, code: kind, state: 'waiting' }, { dueOn });
}
