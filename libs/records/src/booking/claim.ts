import type { EntityManager } from 'typeorm';
import { isDatabaseError } from '../tenancy/database-error.js';
import { uuidv7 } from '../uuidv7.js';
import type { Occupancy } from './occupancy.entity.js';
import { OccupancyConflictError, OffGridError, type OccupancyConflict } from './occupancy-errors.js';
import { lockResourceDays, type ResourceTime } from './occupancy-locks.js';

const GRID_MS = 300_000;
const EXCLUSION_VIOLATION = '23P01';

/** Time of one resource, and what it is for. */
export interface ClaimRequest extends ResourceTime {
  readonly purpose: Occupancy['purpose'];
  readonly appointmentId?: string;
  readonly labStepId?: string;
  readonly batchId?: string;
  readonly closureId?: string;
  readonly receivedOrderId?: string;
  /** Left out: booked. */
  readonly hold?: { readonly id: string; readonly until: Date };
}

/** Names occupancies by what they are for; those of any of these. */
export interface OccupancyOwners {
  readonly holdIds?: readonly string[];
  readonly appointmentIds?: readonly string[];
  readonly labStepIds?: readonly string[];
  readonly batchIds?: readonly string[];
  readonly closureIds?: readonly string[];
  readonly receivedOrderIds?: readonly string[];
}

const OWNED = `(hold_id = ANY ($1::uuid[]) OR appointment_id = ANY ($2::uuid[]) OR lab_step_id = ANY ($3::uuid[])
  OR batch_id = ANY ($4::uuid[]) OR closure_id = ANY ($5::uuid[]) OR received_order_id = ANY ($6::uuid[]))`;

/**
 * Takes all of the time that is asked for, or none of it; the time of `instead` is given back first, so that a visit
 * can move within its own place.
 *
 * Waits for every other claim on the same resources and UTC days, then drops holds that have expired at `now` where
 * they stand in the way. One lock per resource and day is kept to the end of the transaction; the server has room for
 * `max_locks_per_transaction` times `max_connections` of them (6,400 by its defaults).
 *
 * @throws {OffGridError} when a time is not on the five-minute grid
 * @throws {OccupancyConflictError} naming what is taken; the transaction can go on
 */
export async function claim(
  tx: EntityManager,
  requests: readonly ClaimRequest[],
  now: Date,
  instead: OccupancyOwners = {},
): Promise<void> {
  requests.forEach(requireOnGrid);
  const givenBack = await ownedTimes(tx, instead);
  await lockResourceDays(tx, [...requests, ...givenBack]);
  if (givenBack.length > 0) await deleteOwned(tx, instead);
  await dropExpiredHolds(tx, requests, now);
  await insertAll(tx, requests);
}

/** Gives time back. Waits for claims on the same resources and days, as they wait for it. */
export async function release(tx: EntityManager, owners: OccupancyOwners): Promise<void> {
  await lockResourceDays(tx, await ownedTimes(tx, owners));
  await deleteOwned(tx, owners);
}

/** Times of occupancies, by what they are for. */
export async function ownedTimes(tx: EntityManager, owners: OccupancyOwners): Promise<ResourceTime[]> {
  const parameters = ownerParameters(owners);
  if (parameters.every((ids) => ids.length === 0)) return [];
  return tx.query(
    `SELECT resource_id AS "resourceId", starts_at AS "startsAt", ends_at AS "endsAt" FROM occupancy WHERE ${OWNED}`,
    parameters,
  );
}

/** Deletes what stands in the way of `times` and was held no longer than `now`; the holds are over as a whole. */
export async function dropExpiredHolds(tx: EntityManager, times: readonly ResourceTime[], now: Date): Promise<void> {
  const dropped: [{ hold_id: string }[], number] = await tx.query(
    `DELETE FROM occupancy o USING unnest($1::uuid[], $2::timestamptz[], $3::timestamptz[]) AS wanted (resource_id, starts_at, ends_at)
     WHERE o.resource_id = wanted.resource_id AND o.starts_at < wanted.ends_at AND o.ends_at > wanted.starts_at
       AND o.held_until <= $4
     RETURNING o.hold_id`,
    [...timeParameters(times), now],
  );
  const holdIds = dropped[0].map((row) => row.hold_id);
  if (holdIds.length === 0) return;
  await tx.query(
    `UPDATE hold SET state = 'expired', version = version + 1 WHERE id = ANY ($1::uuid[]) AND state = 'active'`,
    [holdIds],
  );
}

async function deleteOwned(tx: EntityManager, owners: OccupancyOwners): Promise<void> {
  await tx.query(`DELETE FROM occupancy WHERE ${OWNED}`, ownerParameters(owners));
}

/** The database decides; only when it refuses is it asked what stood in the way. */
async function insertAll(tx: EntityManager, requests: readonly ClaimRequest[]): Promise<void> {
  if (requests.length === 0) return;
  await tx.query('SAVEPOINT claim');
  try {
    await tx.query(
      `INSERT INTO occupancy (id, resource_id, starts_at, ends_at, purpose, appointment_id, lab_step_id, batch_id, closure_id, hold_id, held_until,
         received_order_id)
       SELECT * FROM unnest($1::uuid[], $2::uuid[], $3::timestamptz[], $4::timestamptz[], $5::text[], $6::uuid[], $7::uuid[],
         $8::uuid[], $9::uuid[], $10::uuid[], $11::timestamptz[], $12::uuid[])`,
      [
        requests.map(() => uuidv7()),
        ...timeParameters(requests),
        requests.map(({ purpose }) => purpose),
        requests.map(({ appointmentId }) => appointmentId ?? null),
        requests.map(({ labStepId }) => labStepId ?? null),
        requests.map(({ batchId }) => batchId ?? null),
        requests.map(({ closureId }) => closureId ?? null),
        requests.map(({ hold }) => hold?.id ?? null),
        requests.map(({ hold }) => hold?.until.toISOString() ?? null),
        requests.map(({ receivedOrderId }) => receivedOrderId ?? null),
      ],
    );
  } catch (error) {
    if (!isDatabaseError(error, [EXCLUSION_VIOLATION])) throw error;
    await tx.query('ROLLBACK TO SAVEPOINT claim');
    throw new OccupancyConflictError(await conflictsOf(tx, requests));
  }
  await tx.query('RELEASE SAVEPOINT claim');
}

/** What is taken, by others or twice within the requests themselves. */
async function conflictsOf(tx: EntityManager, requests: readonly ClaimRequest[]): Promise<OccupancyConflict[]> {
  const rows: (Omit<OccupancyConflict, 'startsAt' | 'endsAt'> & { startsAt: Date; endsAt: Date })[] = await tx.query(
    `WITH wanted AS (
       SELECT * FROM unnest($1::uuid[], $2::timestamptz[], $3::timestamptz[]) WITH ORDINALITY AS w (resource_id, starts_at, ends_at, place)),
     taken AS (
       SELECT o.resource_id, o.starts_at, o.ends_at FROM occupancy o JOIN wanted w
         ON o.resource_id = w.resource_id AND o.starts_at < w.ends_at AND o.ends_at > w.starts_at
       UNION
       SELECT a.resource_id, a.starts_at, a.ends_at FROM wanted a JOIN wanted b
         ON a.resource_id = b.resource_id AND a.place < b.place AND a.starts_at < b.ends_at AND a.ends_at > b.starts_at)
     SELECT r.id AS "resourceId", r.kind, CASE WHEN r.kind <> 'patient' THEN r.label END AS label,
       taken.starts_at AS "startsAt", taken.ends_at AS "endsAt"
     FROM taken JOIN resource r ON r.id = taken.resource_id ORDER BY taken.starts_at, r.id`,
    timeParameters(requests),
  );
  return rows.map((row) => ({ ...row, startsAt: row.startsAt.toISOString(), endsAt: row.endsAt.toISOString() }));
}

function requireOnGrid({ startsAt, endsAt }: ResourceTime): void {
  const isOnGrid = startsAt.getTime() % GRID_MS === 0 && endsAt.getTime() % GRID_MS === 0;
  if (!isOnGrid || endsAt <= startsAt) throw new OffGridError(startsAt, endsAt);
}

function timeParameters(times: readonly ResourceTime[]): [string[], string[], string[]] {
  return [
    times.map(({ resourceId }) => resourceId),
    times.map(({ startsAt }) => startsAt.toISOString()),
    times.map(({ endsAt }) => endsAt.toISOString()),
  ];
}

function ownerParameters(owners: OccupancyOwners): (readonly string[])[] {
  return [
    owners.holdIds ?? [],
    owners.appointmentIds ?? [],
    owners.labStepIds ?? [],
    owners.batchIds ?? [],
    owners.closureIds ?? [],
    owners.receivedOrderIds ?? [],
  ];
}
