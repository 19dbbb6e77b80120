import type { SetupChange, SetupEntry, SetupKind, SetupRecord } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { removeClosure } from './closures.js';
import { entriesFor, everyEntry, requireEntry, requireGround } from './entries.js';
import { SetupRefusedError, type Hand, type Keeper, type RecordOf } from './keeper.js';
import { keeperOf } from './keepers.js';

/** Adds something that the practice consists of. */
export async function addToSetup(tx: EntityManager, actor: Actor, record: SetupRecord, now: Date): Promise<SetupEntry> {
  const id = await addRecord(tx, { actor, now }, record);
  await audit(tx, { actor, now }, 'added', record.kind, id);
  return entryAfter(tx, actor, id, record);
}

/**
 * Replaces a record with what was sent.
 *
 * @throws {PreconditionFailedError} when somebody else was faster
 * @throws {SetupRefusedError} when it changes what booked time or published paths rest on
 */
export async function replaceInSetup(
  tx: EntityManager,
  actor: Actor,
  { id, version, record }: { id: string; version: number; record: SetupRecord },
  now: Date,
): Promise<SetupEntry> {
  const before = await lockEntry(tx, actor, id);
  requireVersion(version, before.version);
  await replaceRecord(tx, { actor, now }, before, record);
  await audit(tx, { actor, now }, 'changed', record.kind, id);
  return entryAfter(tx, actor, id, record);
}

/** Takes out of use, or puts back into use. What is booked keeps its place. */
export async function retireInSetup(
  tx: EntityManager,
  actor: Actor,
  { id, version, isRetired }: { id: string; version: number; isRetired: boolean },
  now: Date,
): Promise<SetupEntry> {
  const before = await lockEntry(tx, actor, id);
  requireVersion(version, before.version);
  await setRetired(tx, before, isRetired, now);
  await audit(tx, { actor, now }, isRetired ? 'retired' : 'returned', before.record.kind, id);
  return entryAfter(tx, actor, id, before.record);
}

/** A closure that was a mistake, or is over sooner. What has gone already is no error. */
export async function dropClosure(tx: EntityManager, actor: Actor, id: string, now: Date): Promise<void> {
  await removeClosure(tx, { actor, now }, await requireEntry(tx, actor, id));
  await audit(tx, { actor, now }, 'removed', 'closure', id);
}

/** Makes a change without counting it as one: for a look at what it would do, in a transaction that is given up. */
export async function tryChange(tx: EntityManager, hand: Hand, change: SetupChange): Promise<void> {
  if (change.do === 'add') {
    await addRecord(tx, hand, change.record);
    return;
  }
  const before = await requireEntry(tx, hand.actor, change.id);
  if (change.do === 'replace') await replaceRecord(tx, hand, before, change.record);
  else if (change.do === 'drop') await removeClosure(tx, hand, before);
  else await setRetired(tx, before, change.do === 'retire', hand.now);
}

async function addRecord(tx: EntityManager, hand: Hand, record: SetupRecord): Promise<string> {
  await requireGround(tx, hand.actor, record);
  const id = uuidv7();
  await keeperFor(record).insert(tx, id, record, hand);
  return id;
}

async function replaceRecord(tx: EntityManager, hand: Hand, before: SetupEntry, record: SetupRecord): Promise<void> {
  const keeper = keeperFor(record);
  requireSameGround(keeper, before.record, record);
  await requireGround(tx, hand.actor, record);
  await keeper.replace(tx, before.id, record, hand);
  await countVersion(tx, keeper, before.id);
}

async function setRetired(tx: EntityManager, { id, record }: SetupEntry, isRetired: boolean, now: Date): Promise<void> {
  const keeper = keeperFor(record);
  if (!keeper.retires) {
    throw new SetupRefusedError(
      `A ${record.kind} is not taken out of use by itself.`,
      'taking its parts out of use, or a closure',
    );
  }
  await tx.query(`UPDATE ${keeper.table} SET retired_at = $2 WHERE id = $1`, [id, isRetired ? now : null]);
  await countVersion(tx, keeper, id);
}

/** The keeper of a record's own kind, which the compiler can't tell from another's. */
function keeperFor(record: SetupRecord): Keeper<SetupKind> {
  return keeperOf<SetupKind>(record.kind);
}

function requireSameGround(keeper: Keeper<SetupKind>, before: SetupRecord, after: SetupRecord): void {
  if (before.kind !== after.kind)
    throw new SetupRefusedError(`This is a ${before.kind}, not a ${after.kind}.`, `the fields of a ${before.kind}`);
  const fixed = keeper.fixed as readonly string[];
  const valueOf = (record: SetupRecord, field: string) => JSON.stringify(record[field as keyof RecordOf<SetupKind>]);
  const moved = fixed.find((field) => valueOf(before, field) !== valueOf(after, field));
  if (moved === undefined) return;
  throw new SetupRefusedError(
    `"${moved}" can't change: booked time and published paths rest on it.`,
    `${valueOf(before, moved)}, or another ${before.kind} beside this one`,
  );
}

/** Editors of one record wait for each other at the row that carries its version. */
async function lockEntry(tx: EntityManager, actor: Actor, id: string): Promise<SetupEntry> {
  const { record } = await requireEntry(tx, actor, id);
  await tx.query(`SELECT FROM ${keeperOf(record.kind).table} WHERE id = $1 FOR UPDATE`, [id]);
  return requireEntry(tx, actor, id);
}

async function countVersion(tx: EntityManager, { table }: Keeper<SetupKind>, id: string): Promise<void> {
  await tx.query(`UPDATE ${table} SET version = version + 1 WHERE id = $1`, [id]);
}

/**
 * As the actor sees it; who opens a clinic answers for it from that moment on. A person who works only at others' clinics
 * from now on is out of sight, and is answered for the last time, as it was sent.
 */
async function entryAfter(tx: EntityManager, actor: Actor, id: string, sent: SetupRecord): Promise<SetupEntry> {
  const isIt = (each: SetupEntry): boolean => each.id === id;
  const seen = (await entriesFor(tx, { ...actor, clinicIds: [...actor.clinicIds, id] })).find(isIt);
  if (seen !== undefined) return seen;
  const kept = (await everyEntry(tx)).find(isIt);
  if (kept === undefined) throw new Error(`What was just written is not there: ${id}.`);
  return { ...kept, record: sent };
}

function audit(tx: EntityManager, { actor, now }: Hand, what: string, kind: SetupKind, id: string): Promise<void> {
  const subject = { subjectKind: kind, subjectId: id };
  return recordAudit(tx, { actorId: actor.userId, action: `setup-${what}`, ...subject, details: {}, at: now });
}
