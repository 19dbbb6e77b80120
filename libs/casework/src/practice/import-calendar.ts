import { overlapping, startOfDayMs, type Interval } from '@archwright/calendar';
import type { ImportCalendar, ImportedCalendar } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { readBusyTimes } from '@archwright/interop';
import { recordAudit, uuidv7 } from '@archwright/records';
import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { noteClosure, withdrawNoted } from '../disturbances/note-closure.js';
import {
  FEED_REASON,
  blockFeedTimes,
  feedTimes,
  keyOf,
  toFeedTime,
  unblockFeedTimes,
  type FeedTime,
} from './feed-times.js';
import { requireResourceZone } from './resource-zone.js';

const DAY_MS = 86_400_000;
/** From yesterday, for visits that are still going on, to a little beyond a year: no path is planned further ahead. */
const FROM_DAYS = -1;
const UNTIL_DAYS = 400;
/** Each day costs a lock of the database, which has room for some thousands. */
const MOST_DAYS = 1100;

/** Local dates of the resource between which a feed is read; usually from yesterday to 400 days ahead. */
export interface FeedPeriod {
  readonly fromOn?: string | undefined;
  /** The first date that is no longer read. */
  readonly untilOn?: string | undefined;
}

export class FeedPeriodError extends DomainError {
  constructor(from: string, until: string) {
    super(
      'casework.feed-period',
      `A calendar can't be read from ${from} until ${until}. Accepted: an end after the start, at most ${String(MOST_DAYS)} days later.`,
      { from, until },
    );
  }
}

/**
 * Reads an outside calendar of one resource: times that are new block it, times that are gone free it, the rest stays
 * as it is, and the same calendar again writes no row. Booked visits keep their place; those that a busy time falls on
 * are told, and repairs are looked for.
 *
 * @throws {RecordNotFoundError} when the resource is none of the actor's clinics'
 * @throws {CalendarFileError} when the text is no calendar; nothing changes
 * @throws {FeedPeriodError} when the period is empty or too long
 */
export async function importResourceCalendar(
  tx: EntityManager,
  actor: Actor,
  resourceId: string,
  { source, calendar }: Pick<ImportCalendar, 'source' | 'calendar'>,
  now: Date,
  period: FeedPeriod = {},
): Promise<ImportedCalendar> {
  const zone = await requireResourceZone(tx, actor, resourceId);
  const window = windowOf(period, zone, now);
  const { busy, problems } = readBusyTimes(calendar, { zone, window });
  const feed = await lockFeed(tx, resourceId, source);
  const before = await feedTimes(tx, feed.id, window);
  const wanted = new Map(busy.map(toFeedTime).map((time) => [keyOf(time), time]));
  const known = new Set(before.map(keyOf));
  const gone = before.filter((time) => !wanted.has(keyOf(time)));
  const added = [...wanted].filter(([key]) => !known.has(key)).map(([, time]) => time);
  await withdrawNoted(
    tx,
    actor,
    gone.map(({ id }) => id),
    now,
  );
  await unblockFeedTimes(tx, gone);
  await blockFeedTimes(tx, { resourceId, feedId: feed.id }, added, gone, now);
  const taken = await takenTimes(tx, resourceId, window);
  const disturbances = await noteFallen(tx, actor, { resourceId, added, taken }, now);

  const hash = createHash('sha256').update(calendar).digest('hex');
  if (hash !== feed.hash || added.length > 0 || gone.length > 0) {
    await tx.query('UPDATE imported_calendar SET content_hash = $2, imported_at = $3 WHERE id = $1', [
      feed.id,
      hash,
      now,
    ]);
    await recordAudit(tx, {
      actorId: actor.userId,
      action: 'import-calendar',
      subjectKind: 'resource',
      subjectId: resourceId,
      details: { importId: feed.id, added: added.length, gone: gone.length, problems: problems.length },
      at: now,
    });
  }
  return {
    resourceId,
    busy: wanted.size,
    unchanged: wanted.size - added.length,
    gone: gone.length,
    disturbances,
    ...collisionsWith([...wanted.values()], taken),
    problems,
  };
}

/** How many of the new busy times fall on a visit to come. */
async function noteFallen(
  tx: EntityManager,
  actor: Actor,
  { resourceId, added, taken }: { resourceId: string; added: readonly FeedTime[]; taken: readonly TakenTime[] },
  now: Date,
): Promise<number> {
  let noted = 0;
  for (const { id: closureId, startsAt, endsAt } of added) {
    const time = { startMs: startsAt.getTime(), endMs: endsAt.getTime() };
    if (overlapping(taken, time).length === 0) continue;
    const closure = { ...time, closureId, what: 'resource' as const, id: resourceId, reason: FEED_REASON };
    if (await noteClosure(tx, actor, closure, now)) noted += 1;
  }
  return noted;
}

function windowOf({ fromOn, untilOn }: FeedPeriod, zone: string, now: Date): Interval {
  const startMs = fromOn === undefined ? now.getTime() + FROM_DAYS * DAY_MS : startOfDayMs(fromOn, zone);
  const endMs =
    untilOn === undefined ? Math.max(now.getTime(), startMs) + UNTIL_DAYS * DAY_MS : startOfDayMs(untilOn, zone);
  if (endMs > startMs && endMs - startMs <= MOST_DAYS * DAY_MS) return { startMs, endMs };
  throw new FeedPeriodError(fromOn ?? 'yesterday', untilOn ?? 'its end');
}

/** The feed's row; importers of the same feed wait for each other at it. An empty hash: it is new. */
async function lockFeed(tx: EntityManager, resourceId: string, source: string): Promise<{ id: string; hash: string }> {
  await tx.query(
    `INSERT INTO imported_calendar (id, resource_id, source, content_hash, imported_at) VALUES ($1, $2, $3, '', now())
     ON CONFLICT (organisation_id, resource_id, source) DO NOTHING`,
    [uuidv7(), resourceId, source],
  );
  const [feed]: { id: string; hash: string }[] = await tx.query(
    `SELECT id, content_hash AS hash FROM imported_calendar WHERE resource_id = $1 AND source = $2 FOR UPDATE`,
    [resourceId, source],
  );
  if (feed === undefined) throw new Error('A feed that was just registered is not there.');
  return feed;
}

interface TakenTime extends Interval {
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly appointmentId: string | null;
}

/** Booked and held times of the resource, by start. */
async function takenTimes(tx: EntityManager, resourceId: string, window: Interval): Promise<TakenTime[]> {
  const rows: Omit<TakenTime, keyof Interval>[] = await tx.query(
    `SELECT starts_at AS "startsAt", ends_at AS "endsAt", appointment_id AS "appointmentId" FROM occupancy
     WHERE resource_id = $1 AND closure_id IS NULL AND ends_at > $2 AND starts_at < $3 ORDER BY starts_at`,
    [resourceId, new Date(window.startMs), new Date(window.endMs)],
  );
  return rows.map((row) => ({ ...row, startMs: row.startsAt.getTime(), endMs: row.endsAt.getTime() }));
}

/** Those of `taken` that busy times fall on, and how many busy times do. */
function collisionsWith(
  busy: readonly Pick<FeedTime, 'startsAt' | 'endsAt'>[],
  taken: readonly TakenTime[],
): Pick<ImportedCalendar, 'conflicts' | 'booked'> {
  const met = busy.map(({ startsAt, endsAt }) =>
    overlapping(taken, { startMs: startsAt.getTime(), endMs: endsAt.getTime() }),
  );
  const booked = new Set(met.flat());
  return {
    conflicts: met.filter((each) => each.length > 0).length,
    booked: taken
      .filter((each) => booked.has(each))
      .map(({ startsAt, endsAt, appointmentId }) => ({
        startsAt: startsAt.toISOString(),
        endsAt: endsAt.toISOString(),
        appointmentId,
      })),
  };
}
