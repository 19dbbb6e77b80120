import { overlapping, subtract, type Interval } from '@archwright/calendar';
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

interface Wanted extends Interval {
  readonly resourceId: string;
  readonly request: BlockRequest;
}

/** Booked, held or otherwise blocked time of one resource. */
interface Taken extends Interval {
  readonly resourceId: string;
  readonly appointmentId: string | null;
  readonly labStepId: string | null;
  readonly closureId: string | null;
}

/**
 * Keeps new bookings out of closures, absences and imported busy times. What these closures blocked before is given up
 * first. Unlike a claim it never fails: booked time inside keeps its place and is reported, the rest is blocked. Where
 * requests overlap each other, the one that begins first holds the time.
 */
export async function blockTime(tx: EntityManager, requests: readonly BlockRequest[], now: Date): Promise<Collision[]> {
  const rounded = requests.map(roundOutward);
  const owners = { closureIds: requests.map(({ closureId }) => closureId) };
  await lockResourceDays(tx, [...rounded, ...(await ownedTimes(tx, owners))]);
  await dropExpiredHolds(tx, rounded, now);
  const wanted = byResource(
    rounded.map((request) => ({ resourceId: request.resourceId, request, ...toInterval(request) })),
  );
  const taken = byResource(await readTaken(tx, wanted, owners.closureIds));
  const pieces: ClaimRequest[] = [];
  const collisions: Collision[] = [];
  for (const [resourceId, ofResource] of wanted) {
    const inTheWay = taken.get(resourceId) ?? [];
    pieces.push(...freePieces(ofResource, inTheWay));
    collisions.push(...ofResource.flatMap((each) => collisionsOf(each, inTheWay)));
  }
  await claim(tx, pieces, now, owners);
  return collisions;
}

/**
 * What is left of each request beside taken time and requests that begin before it.
 *
 * @param wanted of one resource, by start
 * @param taken of the same resource; disjoint, by start
 */
function freePieces(wanted: readonly Wanted[], taken: readonly Taken[]): ClaimRequest[] {
  // An earlier request that reaches past the start of this one began before it, so it covers all from there on.
  let reachedMs = -Infinity;
  return wanted.flatMap(({ request, startMs, endMs }) => {
    const rest = { startMs: Math.max(startMs, reachedMs), endMs };
    reachedMs = Math.max(reachedMs, endMs);
    if (rest.startMs >= rest.endMs) return [];
    return subtract([rest], overlapping(taken, rest)).map((free) => ({
      ...request,
      startsAt: new Date(free.startMs),
      endsAt: new Date(free.endMs),
    }));
  });
}

function collisionsOf(wanted: Wanted, taken: readonly Taken[]): Collision[] {
  return overlapping(taken, wanted)
    .filter(({ closureId }) => closureId === null)
    .map(({ resourceId, startMs, endMs, appointmentId, labStepId }) => ({
      closureId: wanted.request.closureId,
      resourceId,
      startsAt: new Date(startMs),
      endsAt: new Date(endMs),
      appointmentId,
      labStepId,
    }));
}

/**
 * What is taken in the days that the requests reach over, resource by resource. Read by the outer bounds: joining each
 * request with each occupancy costs their product.
 */
async function readTaken(
  tx: EntityManager,
  wanted: ReadonlyMap<string, readonly Wanted[]>,
  except: readonly string[],
): Promise<Taken[]> {
  if (wanted.size === 0) return [];
  const bounds = [...wanted.values()].map((times) => ({
    startMs: times.reduce((first, { startMs }) => Math.min(first, startMs), Infinity),
    endMs: times.reduce((last, { endMs }) => Math.max(last, endMs), -Infinity),
  }));
  const rows: (Omit<Taken, keyof Interval> & { startsAt: Date; endsAt: Date })[] = await tx.query(
    `SELECT o.resource_id AS "resourceId", o.starts_at AS "startsAt", o.ends_at AS "endsAt",
       o.appointment_id AS "appointmentId", o.lab_step_id AS "labStepId", o.closure_id AS "closureId"
     FROM occupancy o JOIN unnest($1::uuid[], $2::timestamptz[], $3::timestamptz[]) AS w (resource_id, starts_at, ends_at)
       ON o.resource_id = w.resource_id AND o.starts_at < w.ends_at AND o.ends_at > w.starts_at
     WHERE o.closure_id IS NULL OR o.closure_id <> ALL ($4::uuid[])`,
    [
      [...wanted.keys()],
      bounds.map(({ startMs }) => new Date(startMs).toISOString()),
      bounds.map(({ endMs }) => new Date(endMs).toISOString()),
      except,
    ],
  );
  return rows.map(({ startsAt, endsAt, ...row }) => ({ ...row, ...toInterval({ startsAt, endsAt }) }));
}

/** Resources with what belongs to each, by start. */
function byResource<Time extends Interval & { resourceId: string }>(times: readonly Time[]): Map<string, Time[]> {
  const grouped = new Map<string, Time[]>();
  for (const time of [...times].sort((one, other) => one.startMs - other.startMs)) {
    const group = grouped.get(time.resourceId);
    if (group === undefined) grouped.set(time.resourceId, [time]);
    else group.push(time);
  }
  return grouped;
}

function roundOutward(request: BlockRequest): BlockRequest {
  return {
    ...request,
    startsAt: new Date(Math.floor(request.startsAt.getTime() / GRID_MS) * GRID_MS),
    endsAt: new Date(Math.ceil(request.endsAt.getTime() / GRID_MS) * GRID_MS),
  };
}

function toInterval({ startsAt, endsAt }: Pick<ResourceTime, 'startsAt' | 'endsAt'>): Interval {
  return { startMs: startsAt.getTime(), endMs: endsAt.getTime() };
}
