import type { Interval } from '@archwright/calendar';
import type { PlannedSegment } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** How the time of one bench place is used; overlapping and unsorted. */
export interface PlaceTimes {
  /** By laboratory work, live holds included. */
  readonly taken: readonly Interval[];
  /** The part of it in which someone works at it. */
  readonly handsOn: readonly Interval[];
  readonly closed: readonly Interval[];
}

interface Row {
  readonly placeId: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly purpose: string;
  readonly segments: readonly PlannedSegment[] | null;
}

/** By place; one with nothing in the window is not in it. A run of a machine has no hands-on time of its own. */
export async function loadPlaceTimes(
  tx: EntityManager,
  placeIds: readonly string[],
  window: Interval,
  now: Date,
): Promise<Map<string, PlaceTimes>> {
  const rows: Row[] = await tx.query(
    `SELECT o.resource_id AS "placeId", o.starts_at AS "startsAt", o.ends_at AS "endsAt", o.purpose, s.segments
     FROM occupancy o LEFT JOIN lab_step s ON s.id = o.lab_step_id
     WHERE o.resource_id = ANY ($1::uuid[]) AND o.starts_at < $3 AND o.ends_at > $2
       AND (o.held_until IS NULL OR o.held_until > $4)`,
    [placeIds, new Date(window.startMs), new Date(window.endMs), now],
  );
  const times = new Map<string, { taken: Interval[]; handsOn: Interval[]; closed: Interval[] }>();
  for (const row of rows) {
    const place = times.get(row.placeId) ?? { taken: [], handsOn: [], closed: [] };
    times.set(row.placeId, place);
    const span = { startMs: row.startsAt.getTime(), endMs: row.endsAt.getTime() };
    if (row.purpose !== 'lab') place.closed.push(span);
    else {
      place.taken.push(span);
      place.handsOn.push(...handsOnWithin(row.segments ?? [], span));
    }
  }
  return times;
}

function handsOnWithin(segments: readonly PlannedSegment[], { startMs, endMs }: Interval): Interval[] {
  return segments
    .filter(({ kind }) => kind === 'hands-on')
    .map((segment) => ({
      startMs: Math.max(startMs, Date.parse(segment.startsAt)),
      endMs: Math.min(endMs, Date.parse(segment.endsAt)),
    }))
    .filter((span) => span.startMs < span.endMs);
}
