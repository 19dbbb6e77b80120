import type { KeepPhotograph, PhotographList, PhotographView, RemovePhotograph } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Photograph, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { changeStage, loadStage } from '../capture/stage-record.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { PictureRefusedError, readJpeg, type JpegSize } from './jpeg.js';

type Row = Omit<PhotographView, 'recordedAt' | 'removed'> & {
  readonly recordedAt: Date;
  readonly removedAt: Date | null;
  readonly removedBy: string | null;
  readonly removalReason: string | null;
};

/** Photographs of several visits, in the order in which they were kept; those taken away as well. */
export async function photographsOf(tx: EntityManager, stageIds: readonly string[]): Promise<PhotographView[]> {
  const rows: Row[] = await tx.query(
    `SELECT p.id, p.stage_id AS "stageId", p.caption, p.width_px AS "widthPx", p.height_px AS "heightPx",
       p.recorded_at AS "recordedAt", u.name AS "recordedBy", p.removed_at AS "removedAt", r.name AS "removedBy",
       p.removal_reason AS "removalReason"
     FROM photograph p JOIN user_account u ON u.id = p.recorded_by LEFT JOIN user_account r ON r.id = p.removed_by
     WHERE p.stage_id = ANY ($1::uuid[]) ORDER BY p.recorded_at, p.id`,
    [stageIds],
  );
  return rows.map(({ recordedAt, removedAt, removedBy, removalReason, ...row }) => ({
    ...row,
    recordedAt: recordedAt.toISOString(),
    removed:
      removedAt === null ? null : { at: removedAt.toISOString(), by: removedBy ?? '', reason: removalReason ?? '' },
  }));
}

/** @throws {RecordNotFoundError} for a stage that the actor may not see */
export async function listPhotographs(tx: EntityManager, actor: Actor, stageId: string): Promise<PhotographList> {
  await loadStage(tx, actor, stageId);
  return { items: await photographsOf(tx, [stageId]) };
}

/**
 * Keeps a photograph with the visit at which it was taken.
 *
 * @throws {RequestInvalidError} for what is no JPEG file, or one with notes of a camera in it
 */
export async function keepPhotograph(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { caption, jpeg }: KeepPhotograph,
  now: Date,
): Promise<PhotographView> {
  const recordedBy = personOf(actor, 'A photograph is kept by the person who took it.');
  const { stage } = await loadStage(tx, actor, stageId, { lock: true });
  const picture = Buffer.from(jpeg, 'base64');
  const id = uuidv7();
  await tx.insert(Photograph, { id, stageId, caption, ...sizeOf(picture), picture, recordedAt: now, recordedBy });
  await changeStage(tx, stage, {});
  const body = { stage: stage.code };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'photograph-kept', body, actorId: recordedBy, at: now });
  await recordAudit(tx, {
    actorId: recordedBy,
    action: 'keep-photograph',
    subjectKind: 'stage',
    subjectId: stageId,
    details: { photographId: id, caption },
    at: now,
  });
  return viewOne(tx, stageId, id);
}

function sizeOf(picture: Buffer): JpegSize {
  try {
    return readJpeg(picture);
  } catch (error) {
    if (!(error instanceof PictureRefusedError)) throw error;
    throw new RequestInvalidError([{ path: 'jpeg', problem: error.message }]);
  }
}

/** @returns the JPEG file @throws {RecordNotFoundError} for one that is not there, or was taken away */
export async function readPhotograph(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  photographId: string,
): Promise<Buffer> {
  await loadStage(tx, actor, stageId);
  const found = await tx.findOne(Photograph, {
    select: { id: true, picture: true },
    where: { id: photographId, stageId },
  });
  if (found?.picture == null) throw new RecordNotFoundError('photograph', photographId);
  return found.picture;
}

/**
 * Takes a photograph away, as one of another patient or without permission: its picture is gone for good.
 *
 * @throws {WrongStateError} when it was taken away before
 */
export async function removePhotograph(
  tx: EntityManager,
  actor: Actor,
  { stageId, photographId }: { readonly stageId: string; readonly photographId: string },
  { reason }: RemovePhotograph,
  now: Date,
): Promise<PhotographView> {
  const removedBy = personOf(actor, 'A photograph is taken away by a person.');
  const { stage } = await loadStage(tx, actor, stageId, { lock: true });
  const known = await tx.findOneBy(Photograph, { id: photographId, stageId });
  if (known === null) throw new RecordNotFoundError('photograph', photographId);
  if (known.removedAt !== null) throw new WrongStateError('The photograph', 'taken away', 'one that is still kept');
  await tx.update(
    Photograph,
    { id: photographId },
    { picture: null, removedAt: now, removedBy, removalReason: reason },
  );
  await changeStage(tx, stage, {});
  const body = { stage: stage.code, reason };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'photograph-removed', body, actorId: removedBy, at: now });
  await recordAudit(tx, {
    actorId: removedBy,
    action: 'remove-photograph',
    subjectKind: 'stage',
    subjectId: stageId,
    details: { photographId, reason },
    at: now,
  });
  return viewOne(tx, stageId, photographId);
}

async function viewOne(tx: EntityManager, stageId: string, photographId: string): Promise<PhotographView> {
  const found = (await photographsOf(tx, [stageId])).find(({ id }) => id === photographId);
  if (found === undefined) throw new RecordNotFoundError('photograph', photographId);
  return found;
}
