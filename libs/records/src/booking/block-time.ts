import { normalise, subtract, type Interval } from '@archwright/calendar';
import type { EntityManager } from 'typeorm';
import { claim, dropExpiredHolds, ownedTimes, type ClaimRequest } from './claim.js';
import { lockResourceDays, type ResourceTime } from './occupancy-locks.js';

const GRID_MS = 300_000;

/** Time in which a resource is closed, absent or busy elsewhere; rounded outward to the grid. */
export interface BlockRequest extends ResourceTime {
  readonly purpose: 'closure' | 'absence' | 'busy';
  readonly closureId: string;
}

/** Booked or held time that a closure falls on. It stays until a person decides. */
export interface Collision extends ResourceTime {
  readonly closureId: string;
  readonly appointmentId: string | null;
  readonly labStepId: string | null;
}

interface Taken extends ResourceTime {
  readonly appointmentId: string | null;
  readonly labStepId: string | null;
  readonly closureId: string | null;
}

/**
 * Keeps new bookings out of closures, absences and imported busy times. What these closures blocked before is given up
 * first. Unlike a claim it never fails: booked time inside keeps its place and is reported, the rest is blocked.
 */
export async function blockTime(tx: EntityManager, requests: readonly BlockRequest[], now: Date): Promise<Collision[]> {
  const rounded = requests.map(roundOutward);
  const owners = { closureIds: requests.map(({ closureId }) => closureId) };
  await lockResourceDays(tx, [...rounded, ...(await ownedTimes(tx, owners))]);
  await dropExpiredHolds(tx, rounded, now);
  const taken = await readTaken(tx, rounded, owners.closureIds);
  const pieces: ClaimRequest[] = [];
  const collisions: Collision[] = [];
  for (const request of rounded) {
    const inTheWay = [
      ...taken.filter((each) => overlaps(each, request)),
      ...pieces.filter((each) => overlaps(each, request)),
    ];
    for (const free of subtract([toInterval(request)], normalise(inTheWay.map(toInterval)))) {
      pieces.push({ ...request, startsAt: new Date(free.startMs), endsAt: new Date(free.endMs) });
    }
    for (const { resourceId, startsAt, endsAt, appointmentId, labStepId, closureId } of taken) {
      const collides = closureId === null && overlaps({ resourceId, startsAt, endsAt }, request);
      if (collides)
        collisions.push({ closureId: request.closureId, resourceId, startsAt, endsAt, appointmentId, labStepId });
    }
  }
  await claim(tx, pieces, now, owners);
  return collisions;
}

async function readTaken(
  tx: EntityManager,
  times: readonly ResourceTime[],
  except: readonly string[],
): Promise<Taken[]> {
  if (times.length === 0) return [];
  return tx.query(
    `SELECT DISTINCT o.id, o.resource_id AS "resourceId", o.starts_at AS "startsAt", o.ends_at AS "endsAt",
       o.appointment_id AS "appointmentId", o.lab_step_id AS "labStepId", o.closure_id AS "closureId"
     FROM occupancy o JOIN unnest($1::uuid[], $2::timestamptz[], $3::timestamptz[]) AS w (resource_id, starts_at, ends_at)
       ON o.resource_id = w.resource_id AND o.starts_at < w.ends_at AND o.ends_at > w.starts_at
     WHERE o.closure_id IS NULL OR o.closure_id <> ALL ($4::uuid[])`,
    [
      times.map(({ resourceId }) => resourceId),
      times.map(({ startsAt }) => startsAt.toISOString()),
      times.map(({ endsAt }) => endsAt.toISOString()),
      except,
    ],
  );
}

function roundOutward(request: BlockRequest): BlockRequest {
  return {
    ...request,
    startsAt: new Date(Math.floor(request.startsAt.getTime() / GRID_MS) * GRID_MS),
    endsAt: new Date(Math.ceil(request.endsAt.getTime() / GRID_MS) * GRID_MS),
  };
}

function overlaps(a: ResourceTime, b: ResourceTime): boolean {
  return a.resourceId === b.resourceId && a.startsAt < b.endsAt && a.endsAt > b.startsAt;
}

function toInterval({ startsAt, endsAt }: ResourceTime): Interval {
  return { startMs: startsAt.getTime(), endMs: endsAt.getTime() };
}
