import type { DecideReferral, ReferralTaskView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { ReferralTask, SoreSpot } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { noteAftercare } from './note.js';
import { placeWords } from './region-words.js';
import { viewReferralTask } from './sore-spot-views.js';
import { lockTreatedCase } from './treated-case.js';

/**
 * A clinician refers, or says why not. The program reminds; the licensed clinician and the local rules of referral decide.
 *
 * @throws {WrongStateError} when it was decided before, or the spot has healed
 */
export async function decideReferral(
  tx: EntityManager,
  actor: Actor,
  taskId: string,
  { version, decision, note }: DecideReferral & { version: number },
  now: Date,
): Promise<ReferralTaskView> {
  const decidedBy = personOf(actor, 'A referral is decided by a clinician.');
  const seen = await tx.findOneBy(ReferralTask, { id: taskId });
  if (seen === null) throw new RecordNotFoundError('referral task', taskId);
  await lockTreatedCase(tx, actor, seen.caseId, now);
  const task = await tx.findOneByOrFail(ReferralTask, { id: taskId });
  requireVersion(version, task.version);
  if (task.state !== 'open') throw new WrongStateError('This referral', task.state, 'open');
  const decided = { state: decision, decidedAt: now, decidedBy, decisionNote: note };
  await tx.update(ReferralTask, { id: taskId }, { ...decided, version: version + 1 });
  const sentence = `${await placeOf(tx, task)}: ${decision === 'referred' ? 'referred' : 'not referred, with a reason on record'}.`;
  const subject = { subjectKind: 'referral-task', subjectId: taskId } as const;
  await noteAftercare(
    tx,
    { caseId: task.caseId, kind: 'referral-decided', ...subject, sentence, actorId: decidedBy },
    now,
  );
  return viewReferralTask(tx, taskId);
}

/** A referral that waits for a decision when its spot heals is no longer needed. */
export async function settleByHealing(tx: EntityManager, soreSpotId: string, now: Date): Promise<void> {
  const settled = { state: 'resolved', decidedAt: now, version: () => 'version + 1' } as const;
  await tx.update(ReferralTask, { soreSpotId, state: 'open' }, settled);
}

async function placeOf(tx: EntityManager, { soreSpotId }: ReferralTask): Promise<string> {
  const spot = soreSpotId === null ? null : await tx.findOneBy(SoreSpot, { id: soreSpotId });
  return spot === null ? 'A sore' : `The sore spot, ${placeWords(spot.arch, spot.region)}`;
}
