import type { StageView, StateBearingScrew } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { BearingScrew, Kit, Occupancy, Resource, recordAudit, uuidv7 } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { WrongStateError } from '../errors.js';
import { personOf } from './person.js';
import { changeStage, loadStage } from './stage-record.js';
import { visitOfStage } from './stage-visit.js';

const TRACING_SET = 'tracing-set';

/** The tracing set that is booked with a stage's visit; null when none is. */
async function kitOfVisit(tx: EntityManager, stageId: string): Promise<Kit | null> {
  const visit = await visitOfStage(tx, stageId);
  if (visit === null) return null;
  const taken = await tx.findBy(Occupancy, { appointmentId: visit.id, purpose: 'visit' });
  return tx.findOneBy(Kit, { id: In(taken.map(({ resourceId }) => resourceId)), code: TRACING_SET });
}

export async function viewTracingKit(tx: EntityManager, stageId: string): Promise<StageView['tracingKit']> {
  const kit = await kitOfVisit(tx, stageId);
  if (kit === null) return null;
  const { label } = await tx.findOneByOrFail(Resource, { id: kit.id });
  return { label, screw: stated(await tx.findOneBy(BearingScrew, { kitId: kit.id })) };
}

type Screw = NonNullable<StateBearingScrew['instead']>;

const stated = (screw: BearingScrew | null): Screw | null =>
  screw === null ? null : { pitchMmPerTurn: screw.pitchMm, raisesBy: screw.raisesBy };

const isSame = (one: Screw | null, other: Screw | null): boolean =>
  one?.pitchMmPerTurn === other?.pitchMmPerTurn && one?.raisesBy === other?.raisesBy;

const inWords = (screw: Screw | null): string =>
  screw === null ? 'not stated' : `stated as ${String(screw.pitchMmPerTurn)} mm in one turn, raised ${screw.raisesBy}`;

/**
 * States the bearing screw of the tracing set at hand; it holds for the set at every later visit.
 *
 * @throws {WrongStateError} when no tracing set is booked with the visit, or when somebody has stated another screw than
 *   the one that this takes the place of, be it at another visit
 */
export async function stateBearingScrew(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { version, pitchMmPerTurn, raisesBy, instead }: StateBearingScrew & { version: number },
  now: Date,
): Promise<void> {
  const statedBy = personOf(actor, 'The screw of a tracing set is stated by a person.');
  const { stage } = await loadStage(tx, actor, stageId, { lock: true });
  requireVersion(version, stage.version);
  const kit = await kitOfVisit(tx, stageId);
  if (kit === null) throw new WrongStateError('The visit', 'without a tracing set', 'a visit with which one is booked');
  // Two visits lock two stages; what they share is the set.
  await tx.findOneOrFail(Kit, { where: { id: kit.id }, lock: { mode: 'for_no_key_update' } });
  const known = await tx.findOneBy(BearingScrew, { kitId: kit.id });
  const inForce = stated(known);
  if (!isSame(inForce, instead))
    throw new WrongStateError('The screw', inWords(inForce), `a screw in place of the one ${inWords(inForce)}`);
  const screw = { pitchMm: pitchMmPerTurn, raisesBy, statedAt: now, statedBy };
  if (known === null) await tx.insert(BearingScrew, { id: uuidv7(), kitId: kit.id, ...screw });
  else await tx.update(BearingScrew, { id: known.id }, screw);
  await changeStage(tx, stage, {});
  await recordAudit(tx, {
    actorId: statedBy,
    action: 'state-bearing-screw',
    subjectKind: 'kit',
    subjectId: kit.id,
    details: { pitchMmPerTurn, raisesBy },
    at: now,
  });
}
