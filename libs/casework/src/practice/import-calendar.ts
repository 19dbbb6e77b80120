import type { ImportCalendar, ImportedCalendar } from '@archwright/contracts';
import { readBusyTimes, type BusyTime } from '@archwright/interop';
import { blockTime, recordAudit, release, uuidv7 } from '@archwright/records';
import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireResourceZone } from './resource-zone.js';

const DAY_MS = 86_400_000;
/** From yesterday, for visits that are still going on, to a little beyond a year: no path is planned further ahead. */
const FROM_DAYS = -1;
const UNTIL_DAYS = 400;

interface BlockedTime {
  readonly id: string;
  /** What names the time in its feed; with the instants, that it is the same as before. */
  readonly sourceUid: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
}

/**
 * Reads an outside calendar of one resource: times that are new block it, times that are gone free it, the rest stays
 * as it is. Booked visits keep their place; how many busy times fall on one is told.
 *
 * @throws {RecordNotFoundError} when the resource is none of the actor's clinics'
 * @throws {CalendarFileError} when the text is no calendar; nothing changes
 */
export async function importResourceCalendar(
  tx: EntityManager,
  actor: Actor,
  resourceId: string,
  { source, calendar }: ImportCalendar,
  now: Date,
): Promise<ImportedCalendar> {
  const zone = await requireResourceZone(tx, actor, resourceId);
  const window = { startMs: now.getTime() + FROM_DAYS * DAY_MS, endMs: now.getTime() + UNTIL_DAYS * DAY_MS };
  const { busy, problems } = readBusyTimes(calendar, { zone, window });
  const importId = await registerImport(tx, resourceId, source, calendar, now);
  const before = await blockedBefore(tx, importId, window);
  const wanted = new Map(busy.map((time) => [keyOf(toBlocked(time)), toBlocked(time)]));
  const known = new Set(before.map(keyOf));
  const gone = before.filter((time) => !wanted.has(keyOf(time)));
  const added = [...wanted].filter(([key]) => !known.has(key)).map(([, time]) => time);
  await unblock(tx, gone);
  await block(tx, { resourceId, importId }, added, gone, now);
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'import-calendar',
    subjectKind: 'resource',
    subjectId: resourceId,
    requestId: null,
    details: { importId, added: added.length, gone: gone.length, problems: problems.length },
    at: now,
  });
  return {
    resourceId,
    busy: wanted.size,
    unchanged: wanted.size - added.length,
    conflicts: await countConflicts(tx, importId, window),
    problems,
  };
}

/** The feed's row; importers of the same feed wait for each other at it. */
async function registerImport(
  tx: EntityManager,
  resourceId: string,
  source: string,
  calendar: string,
  now: Date,
): Promise<string> {
  const hash = createHash('sha256').update(calendar).digest('hex');
  const [row]: { id: string }[] = await tx.query(
    `INSERT INTO imported_calendar (id, resource_id, source, content_hash, imported_at) VALUES ($1, $2, $3, $4, $5)
     ON CONFLICT (organisation_id, resource_id, source)
     DO UPDATE SET content_hash = excluded.content_hash, imported_at = excluded.imported_at RETURNING id`,
    [uuidv7(), resourceId, source, hash, now],
  );
  if (row === undefined) throw new Error('An upsert that returns its row returned none.');
  return row.id;
}

type Window = { readonly startMs: number; readonly endMs: number };

/** What an earlier import blocked, as far as this one can tell: a feed may have dropped what is over. */
async function blockedBefore(tx: EntityManager, importId: string, window: Window): Promise<BlockedTime[]> {
  return tx.query(
    `SELECT id, source_uid AS "sourceUid", starts_at AS "startsAt", ends_at AS "endsAt" FROM closure
     WHERE imported_calendar_id = $1 AND ends_at > $2 AND starts_at < $3`,
    [importId, new Date(window.startMs), new Date(window.endMs)],
  );
}

async function unblock(tx: EntityManager, gone: readonly BlockedTime[]): Promise<void> {
  const closureIds = gone.map(({ id }) => id);
  if (closureIds.length === 0) return;
  await release(tx, { closureIds });
  await tx.query('DELETE FROM closure WHERE id = ANY ($1::uuid[])', [closureIds]);
}

/** Blocks what is new, and again what a closure that is gone covered for another one. */
async function block(
  tx: EntityManager,
  { resourceId, importId }: { resourceId: string; importId: string },
  added: readonly BlockedTime[],
  gone: readonly BlockedTime[],
  now: Date,
): Promise<void> {
  const uncovered: Omit<BlockedTime, 'sourceUid'>[] = await tx.query(
    `SELECT DISTINCT c.id, c.starts_at AS "startsAt", c.ends_at AS "endsAt"
     FROM closure c JOIN unnest($2::timestamptz[], $3::timestamptz[]) AS g (starts_at, ends_at)
       ON c.starts_at < g.ends_at AND c.ends_at > g.starts_at
     WHERE c.resource_id = $1`,
    [resourceId, gone.map(({ startsAt }) => startsAt.toISOString()), gone.map(({ endsAt }) => endsAt.toISOString())],
  );
  await tx.query(
    `INSERT INTO closure (id, resource_id, starts_at, ends_at, reason, imported_calendar_id, source_uid)
     SELECT n.id, $1, n.starts_at, n.ends_at, 'Imported calendar', $2, n.source_uid
     FROM unnest($3::uuid[], $4::timestamptz[], $5::timestamptz[], $6::text[]) AS n (id, starts_at, ends_at, source_uid)`,
    [
      resourceId,
      importId,
      added.map(({ id }) => id),
      added.map(({ startsAt }) => startsAt.toISOString()),
      added.map(({ endsAt }) => endsAt.toISOString()),
      added.map(({ sourceUid }) => sourceUid),
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

/** Busy times of the feed that fall on booked or held time of the resource. Booked times are few beside busy ones. */
async function countConflicts(tx: EntityManager, importId: string, window: Window): Promise<number> {
  const [row]: { conflicts: number }[] = await tx.query(
    `WITH feed AS MATERIALIZED (
       SELECT id, resource_id, starts_at, ends_at FROM closure
       WHERE imported_calendar_id = $1 AND ends_at > $2 AND starts_at < $3),
     booked AS MATERIALIZED (
       SELECT starts_at, ends_at FROM occupancy
       WHERE resource_id = (SELECT resource_id FROM feed LIMIT 1) AND closure_id IS NULL AND ends_at > $2 AND starts_at < $3)
     SELECT count(DISTINCT feed.id)::integer AS conflicts FROM feed JOIN booked
       ON booked.starts_at < feed.ends_at AND booked.ends_at > feed.starts_at`,
    [importId, new Date(window.startMs), new Date(window.endMs)],
  );
  return row?.conflicts ?? 0;
}

function toBlocked({ uid, recurrenceId, startMs, endMs }: BusyTime): BlockedTime {
  const sourceUid = recurrenceId === null ? uid : `${uid} ${recurrenceId}`;
  return { id: uuidv7(), sourceUid, startsAt: new Date(startMs), endsAt: new Date(endMs) };
}

function keyOf({ sourceUid, startsAt, endsAt }: BlockedTime): string {
  return JSON.stringify([sourceUid, startsAt.getTime(), endsAt.getTime()]);
}
