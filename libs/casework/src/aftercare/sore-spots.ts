import type { RecordHealing, RecordSoreSpot, SoreSpotView } from '@archwright/contracts';
import { SORE_SPOT_REGIONS } from '@archwright/measures';
import { RequestInvalidError, requireVersion } from '@archwright/platform';
import { SoreSpot, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { noteAftercare } from './note.js';
import { settleByHealing } from './referrals.js';
import { placeWords, sideOf } from './region-words.js';
import { viewSoreSpot } from './sore-spot-views.js';
import { lockTreatedCase, requireArch, requireBetween } from './treated-case.js';

/**
 * Notes a sore place. Its two weeks run from here until something is adjusted for it.
 *
 * @throws {RequestInvalidError} for a jaw that the case does not treat, a region that the jaw does not have, a day to come
 */
export async function recordSoreSpot(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  body: RecordSoreSpot,
  now: Date,
): Promise<SoreSpotView> {
  const foundBy = personOf(actor, 'A sore spot is seen by a person.');
  const { today } = await lockTreatedCase(tx, actor, caseId, now);
  await requireArch(tx, caseId, body.arch);
  requireRegion(body);
  requireBetween('foundOn', body.foundOn, null, today);
  const id = uuidv7();
  await tx.insert(SoreSpot, { ...body, id, caseId, foundBy, side: sideOf(body.region) });
  const sentence = `A sore spot was found: ${placeWords(body.arch, body.region)}.`;
  const subject = { subjectKind: 'sore-spot', subjectId: id } as const;
  await noteAftercare(tx, { caseId, kind: 'sore-spot-found', ...subject, sentence, actorId: foundBy }, now);
  return viewSoreSpot(tx, id, today);
}

function requireRegion({ arch, region }: RecordSoreSpot): void {
  const regions = SORE_SPOT_REGIONS[arch];
  if (regions.includes(region)) return;
  const accepted = regions.join(', ');
  throw new RequestInvalidError([{ path: 'region', problem: `is no region of the ${arch} jaw`, accepted }]);
}

/**
 * Closes a spot that has healed, and with it a referral that nobody has decided on yet. One that comes back is a new spot.
 *
 * @throws {WrongStateError} when it has healed before
 */
export async function recordHealing(
  tx: EntityManager,
  actor: Actor,
  soreSpotId: string,
  { version, healedOn }: RecordHealing & { version: number },
  now: Date,
): Promise<SoreSpotView> {
  const actorId = personOf(actor, 'Healing is seen by a person.');
  const seen = await tx.findOneBy(SoreSpot, { id: soreSpotId });
  if (seen === null) throw new RecordNotFoundError('sore spot', soreSpotId);
  const { today } = await lockTreatedCase(tx, actor, seen.caseId, now);
  const spot = await tx.findOneByOrFail(SoreSpot, { id: soreSpotId });
  requireVersion(version, spot.version);
  if (spot.resolvedOn !== null) throw new WrongStateError('This sore spot', 'healed', 'an open one');
  requireBetween('healedOn', healedOn, spot.foundOn, today);
  await tx.update(SoreSpot, { id: soreSpotId }, { resolvedOn: healedOn, version: version + 1 });
  await settleByHealing(tx, soreSpotId, now);
  const sentence = `A sore spot has healed: ${placeWords(spot.arch, spot.region)}.`;
  const subject = { subjectKind: 'sore-spot', subjectId: soreSpotId } as const;
  await noteAftercare(tx, { caseId: spot.caseId, kind: 'sore-spot-healed', ...subject, sentence, actorId }, now);
  return viewSoreSpot(tx, soreSpotId, today);
}
