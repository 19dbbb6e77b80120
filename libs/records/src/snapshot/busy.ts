import { normalise, type Interval } from '@archwright/calendar';
import type { EntityManager } from 'typeorm';
import type { Occupancy } from '../booking/occupancy.entity.js';
import type { SnapshotScope } from './snapshot-scope.js';

/** Taken time by resource; a resource with none is not in it. */
export type BusyTimes = ReadonlyMap<string, readonly Interval[]>;

/**
 * Time of an occupancy that no other case shares. A visit that also serves another case, or a run with another case's
 * work in it, stays where it is whatever becomes of this case.
 */
const OWN_ONLY = `(
  o.hold_id IN (SELECT id FROM hold WHERE case_id = ANY ($5::uuid[]))
  OR o.lab_step_id IN (SELECT id FROM lab_step WHERE case_id = ANY ($5::uuid[]))
  OR EXISTS (SELECT FROM appointment_stage s JOIN stage ON stage.id = s.stage_id WHERE s.appointment_id = o.appointment_id)
    AND NOT EXISTS (SELECT FROM appointment_stage s JOIN stage ON stage.id = s.stage_id
      WHERE s.appointment_id = o.appointment_id AND stage.case_id <> ALL ($5::uuid[]))
  OR EXISTS (SELECT FROM batch_member WHERE batch_id = o.batch_id)
    AND NOT EXISTS (SELECT FROM batch_member m JOIN lab_step ON lab_step.id = m.lab_step_id
      WHERE m.batch_id = o.batch_id AND lab_step.case_id <> ALL ($5::uuid[])))`;

/**
 * What is booked, closed or held at `now`; a hold that has expired takes no time any more.
 *
 * @param purpose time that is taken for this alone; null for whatever it is taken
 */
export async function loadBusyTimes(
  tx: EntityManager,
  resourceIds: readonly string[],
  { fromMs, untilMs, withoutCaseIds = [] }: Omit<SnapshotScope, 'clinicIds'>,
  now: Date,
  purpose: Occupancy['purpose'] | null = null,
): Promise<BusyTimes> {
  const without = withoutCaseIds.length === 0 ? '$5::uuid[] IS NOT NULL' : `NOT coalesce(${OWN_ONLY}, false)`;
  const rows: { resourceId: string; startsAt: Date; endsAt: Date }[] = await tx.query(
    `SELECT o.resource_id AS "resourceId", o.starts_at AS "startsAt", o.ends_at AS "endsAt" FROM occupancy o
     WHERE o.resource_id = ANY ($1::uuid[]) AND o.starts_at < $3 AND o.ends_at > $2
       AND (o.held_until IS NULL OR o.held_until > $4) AND ($6::text IS NULL OR o.purpose = $6) AND ${without}`,
    [resourceIds, new Date(fromMs), new Date(untilMs), now, withoutCaseIds, purpose],
  );
  const times = new Map<string, Interval[]>();
  for (const { resourceId, startsAt, endsAt } of rows) {
    const list = times.get(resourceId) ?? [];
    list.push({ startMs: startsAt.getTime(), endMs: endsAt.getTime() });
    times.set(resourceId, list);
  }
  return new Map([...times].map(([resourceId, list]) => [resourceId, normalise(list)]));
}
