import { normalise, overlapping, type Interval } from '@archwright/calendar';
import type { BusyTime } from '@archwright/interop';
import { blockTime, release, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** Of each closure that a feed leaves: nothing else of its events is kept. */
export const FEED_REASON = 'Imported calendar';

/** A closure that stands for one busy time of a feed. */
export interface FeedTime {
  readonly id: string;
  /** What names the time in its feed; with the instants, that it is the same as before. */
  readonly sourceUid: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
}

export function toFeedTime({ uid, recurrenceId, startMs, endMs }: BusyTime): FeedTime {
  const sourceUid = recurrenceId === null ? uid : `${uid} ${recurrenceId}`;
  return { id: uuidv7(), sourceUid, startsAt: new Date(startMs), endsAt: new Date(endMs) };
}

export function keyOf({ sourceUid, startsAt, endsAt }: FeedTime): string {
  return JSON.stringify([sourceUid, startsAt.getTime(), endsAt.getTime()]);
}

/** What earlier imports of the feed blocked, as far as this one can tell: a feed may have dropped what is over. */
export async function feedTimes(tx: EntityManager, feedId: string, window: Interval): Promise<FeedTime[]> {
  return tx.query(
    `SELECT id, source_uid AS "sourceUid", starts_at AS "startsAt", ends_at AS "endsAt" FROM closure
     WHERE imported_calendar_id = $1 AND ends_at > $2 AND starts_at < $3`,
    [feedId, new Date(window.startMs), new Date(window.endMs)],
  );
}

export async function unblockFeedTimes(tx: EntityManager, gone: readonly FeedTime[]): Promise<void> {
  const closureIds = gone.map(({ id }) => id);
  if (closureIds.length === 0) return;
  await release(tx, { closureIds });
  await tx.query('DELETE FROM closure WHERE id = ANY ($1::uuid[])', [closureIds]);
}

/** Blocks what is new, and again what a closure that is gone covered for another one. */
export async function blockFeedTimes(
  tx: EntityManager,
  { resourceId, feedId }: { resourceId: string; feedId: string },
  added: readonly FeedTime[],
  gone: readonly FeedTime[],
  now: Date,
): Promise<void> {
  const uncovered = await closuresOn(tx, resourceId, gone);
  await tx.query(
    `INSERT INTO closure (id, resource_id, starts_at, ends_at, reason, imported_calendar_id, source_uid)
     SELECT n.id, $1, n.starts_at, n.ends_at, $7, $2, n.source_uid
     FROM unnest($3::uuid[], $4::timestamptz[], $5::timestamptz[], $6::text[]) AS n (id, starts_at, ends_at, source_uid)`,
    [
      resourceId,
      feedId,
      added.map(({ id }) => id),
      added.map(({ startsAt }) => startsAt.toISOString()),
      added.map(({ endsAt }) => endsAt.toISOString()),
      added.map(({ sourceUid }) => sourceUid),
      FEED_REASON,
    ],
  );
  const requests = [...added, ...uncovered].map(({ id, startsAt, endsAt }) => ({
    resourceId,
    startsAt,
    endsAt,
    purpose: 'busy' as const,
    closureId: id,
  }));
  await blockTime(tx, requests, now);
}

/** Closures of the resource that share time with any of `times`. */
async function closuresOn(
  tx: EntityManager,
  resourceId: string,
  times: readonly FeedTime[],
): Promise<Pick<FeedTime, 'id' | 'startsAt' | 'endsAt'>[]> {
  const covered = normalise(times.map(toInterval));
  const [first, last] = [covered[0], covered.at(-1)];
  if (first === undefined || last === undefined) return [];
  const closures: Pick<FeedTime, 'id' | 'startsAt' | 'endsAt'>[] = await tx.query(
    `SELECT id, starts_at AS "startsAt", ends_at AS "endsAt" FROM closure
     WHERE resource_id = $1 AND starts_at < $3 AND ends_at > $2`,
    [resourceId, new Date(first.startMs), new Date(last.endMs)],
  );
  return closures.filter((closure) => overlapping(covered, toInterval(closure)).length > 0);
}

function toInterval({ startsAt, endsAt }: Pick<FeedTime, 'startsAt' | 'endsAt'>): Interval {
  return { startMs: startsAt.getTime(), endMs: endsAt.getTime() };
}
