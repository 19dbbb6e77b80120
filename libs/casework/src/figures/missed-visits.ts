import type { EntityManager } from 'typeorm';
import type { MonthCount } from './chart-shares.js';

/** Visits that were missed of those that were due and not cancelled, by the month of the clinic's own calendar. */
export function missedVisits(
  tx: EntityManager,
  clinicIds: readonly string[] | null,
  since: Date,
): Promise<MonthCount[]> {
  return tx.query(
    `SELECT to_char(a.starts_at AT TIME ZONE k.zone, 'YYYY-MM-01') AS "monthOn",
       count(*) FILTER (WHERE a.state = 'missed')::integer AS events, count(*)::integer AS size
     FROM appointment a JOIN clinic k ON k.id = a.clinic_id
     WHERE a.state IN ('completed', 'missed') AND a.starts_at >= $1 AND ($2::uuid[] IS NULL OR a.clinic_id = ANY ($2))
     GROUP BY 1 ORDER BY 1`,
    [since, clinicIds],
  );
}
