import type { EnterDisturbance } from '@archwright/contracts';
import { Disturbance } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { findAffected } from './affected.js';
import { insertDisturbance } from './enter-disturbance.js';
import { settle } from './settle.js';

export interface ClosureToNote {
  readonly closureId: string;
  readonly what: Extract<EnterDisturbance['what'], 'resource' | 'clinic' | 'work-centre' | 'laboratory'>;
  readonly id: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly reason: string;
}

/**
 * A closure that falls on booked visits or planned work to come breaks plans as much as somebody's word that the time is
 * lost: repairs are looked for. What is booked keeps its place until a person decides; what one has decided of the same
 * time is not asked again.
 *
 * @returns whether repairs are looked for
 */
export async function noteClosure(
  tx: EntityManager,
  actor: Actor,
  { closureId, what, id, startMs, endMs, reason }: ClosureToNote,
  now: Date,
): Promise<boolean> {
  if (endMs <= now.getTime()) return false;
  const times = { startsAt: new Date(startMs), endsAt: new Date(endMs) };
  if (await tx.existsBy(Disturbance, { ...times, closureId, state: In(['accepted', 'kept']) })) return false;
  const affected = await findAffected(tx, { what, id, startMs, endMs }, now);
  if (affected.length === 0) return false;
  await insertDisturbance(tx, actor, { ...times, what, subjectId: id, reason, closureId }, now);
  return true;
}

/** Closures that are gone, or are no longer as they were, break nothing: what was not decided yet is taken back. */
export async function withdrawNoted(
  tx: EntityManager,
  actor: Actor,
  closureIds: readonly string[],
  now: Date,
): Promise<void> {
  if (closureIds.length === 0) return;
  const rows = await tx.find(Disturbance, {
    where: { closureId: In(closureIds), state: In(['open', 'planned']) },
    order: { id: 'ASC' },
    lock: { mode: 'pessimistic_write' },
  });
  for (const row of rows) await settle(tx, row, { state: 'withdrawn', decidedBy: actor.userId }, now);
}
