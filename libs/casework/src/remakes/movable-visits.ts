import type { Interval } from '@archwright/calendar';
import type { EntityManager } from 'typeorm';
import type { ResourceTimes } from '../planning/snapshot-changes.js';

/** A booked visit of another case, with the time that would be free if it moved. */
export interface MovableVisit {
  readonly appointmentId: string;
  readonly caseId: string;
  readonly stage: string;
  readonly times: ResourceTimes;
}

/**
 * Booked visits to come of other open cases at these clinics, the earliest first. A visit that serves several cases, is
 * only held, or has begun stays where it is.
 */
export async function movableVisits(
  tx: EntityManager,
  {
    caseId,
    clinicIds,
    untilMs,
  }: { readonly caseId: string; readonly clinicIds: readonly string[]; readonly untilMs: number },
  now: Date,
): Promise<MovableVisit[]> {
  const rows: {
    appointmentId: string;
    caseId: string;
    stage: string;
    resourceId: string;
    startsAt: Date;
    endsAt: Date;
  }[] = await tx.query(
    `SELECT a.id AS "appointmentId", s.case_id AS "caseId", s.code AS stage,
         o.resource_id AS "resourceId", o.starts_at AS "startsAt", o.ends_at AS "endsAt"
       FROM appointment a
       JOIN appointment_stage x ON x.appointment_id = a.id
       JOIN stage s ON s.id = x.stage_id
       JOIN treatment_case c ON c.id = s.case_id AND c.state = 'open'
       JOIN occupancy o ON o.appointment_id = a.id
       JOIN resource r ON r.id = o.resource_id AND r.kind <> 'patient'
       WHERE a.state = 'booked' AND a.starts_at > $1 AND a.starts_at < $2 AND a.clinic_id = ANY ($3::uuid[])
         AND s.case_id <> $4
         AND NOT EXISTS (SELECT FROM appointment_stage y JOIN stage t ON t.id = y.stage_id
           WHERE y.appointment_id = a.id AND t.case_id <> s.case_id)
       ORDER BY a.starts_at, a.id, o.resource_id`,
    [now, new Date(untilMs), clinicIds, caseId],
  );
  const visits = new Map<string, { caseId: string; stage: string; times: Map<string, Interval[]> }>();
  for (const row of rows) {
    const visit = visits.get(row.appointmentId) ?? {
      caseId: row.caseId,
      stage: row.stage,
      times: new Map<string, Interval[]>(),
    };
    const interval = { startMs: row.startsAt.getTime(), endMs: row.endsAt.getTime() };
    visit.times.set(row.resourceId, [...(visit.times.get(row.resourceId) ?? []), interval]);
    visits.set(row.appointmentId, visit);
  }
  return [...visits].map(([appointmentId, visit]) => ({ appointmentId, ...visit }));
}
