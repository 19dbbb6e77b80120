import type { AdjustmentView, RecordAdjustment } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Adjustment, SoreSpot, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError } from '../errors.js';
import { noteAftercare } from './note.js';
import { loadAdjustments } from './sore-spot-views.js';
import { lockTreatedCase, requireArch } from './treated-case.js';

/**
 * Notes what was changed on a denture. The first adjustment for a spot removes its suspected cause: from then its two
 * weeks count.
 *
 * @throws {RecordNotFoundError} for a spot of another case
 * @throws {RequestInvalidError} for another jaw than the spot's, or one that the case does not treat
 */
export async function recordAdjustment(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  body: RecordAdjustment,
  now: Date,
): Promise<AdjustmentView> {
  const doneBy = personOf(actor, 'A denture is adjusted by a person.');
  await lockTreatedCase(tx, actor, caseId, now);
  await requireArch(tx, caseId, body.arch);
  await requireSpot(tx, caseId, body);
  const id = uuidv7();
  await tx.insert(Adjustment, { ...body, id, caseId, doneBy, doneAt: now });
  const sentence = `The ${body.arch} denture was adjusted: ${body.surface.replaceAll('-', ' ')}.`;
  const subject = { subjectKind: 'adjustment', subjectId: id } as const;
  await noteAftercare(tx, { caseId, kind: 'denture-adjusted', ...subject, sentence, actorId: doneBy }, now);
  const [view] = await loadAdjustments(tx, { id });
  if (view === undefined) throw new Error('The adjustment was not written.');
  return view;
}

async function requireSpot(tx: EntityManager, caseId: string, { arch, soreSpotId }: RecordAdjustment): Promise<void> {
  if (soreSpotId === null) return;
  const spot = await tx.findOneBy(SoreSpot, { id: soreSpotId, caseId });
  if (spot === null) throw new RecordNotFoundError('sore spot of this case', soreSpotId);
  if (spot.arch === arch) return;
  throw new RequestInvalidError([{ path: 'arch', problem: "is not the sore spot's jaw", accepted: spot.arch }]);
}
