import { Chair, Resource, blockTime, type BlockRequest, type Collision } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** A closure of something whose time is booked, from when to when. */
export interface ClosedTime {
  readonly closureId: string;
  readonly of: { readonly kind: 'clinic' | 'resource'; readonly id: string };
  readonly startMs: number;
  readonly endMs: number;
}

/**
 * Takes the time of what is closed, so that nothing is booked into it: a chair's, a kit's, a person's or a bench place's
 * own, and of a clinic that of all its chairs. Its people may work elsewhere, or at somebody's home.
 *
 * @returns booked and held time that it falls on, which stays until a person decides
 */
export async function blockClosed(
  tx: EntityManager,
  { closureId, of, startMs, endMs }: ClosedTime,
  now: Date,
): Promise<Collision[]> {
  const times = { closureId, startsAt: new Date(startMs), endsAt: new Date(endMs) };
  const resources = of.kind === 'resource' ? [await purposeOf(tx, of.id)] : await chairsOf(tx, of.id);
  return blockTime(
    tx,
    resources.map((resource) => ({ ...times, ...resource })),
    now,
  );
}

type Blocked = Pick<BlockRequest, 'resourceId' | 'purpose'>;

async function purposeOf(tx: EntityManager, resourceId: string): Promise<Blocked> {
  const { kind } = await tx.findOneByOrFail(Resource, { id: resourceId });
  return { resourceId, purpose: kind === 'clinician' || kind === 'assistant' ? 'absence' : 'closure' };
}

async function chairsOf(tx: EntityManager, clinicId: string): Promise<Blocked[]> {
  const chairs = await tx.findBy(Chair, { clinicId });
  return chairs.map(({ id }) => ({ resourceId: id, purpose: 'closure' }));
}
