import { normalise, type Interval } from '@archwright/calendar';
import type { EntityManager } from 'typeorm';
import type { BusyTimes } from './busy.js';

/** Which stretch of time is read, and what of it could move. */
export interface CaseTimesScope {
  readonly fromMs: number;
  readonly untilMs: number;
  /** A booked visit that starts earlier stays. */
  readonly movableFromMs: number;
  /** Visits that have to move whenever they start. */
  readonly movingAppointmentIds?: readonly string[];
  /** Which visits may move: those that are booked, or those that are merely kept provisionally, with the work for them. */
  readonly movable?: 'booked' | 'provisional';
}

/** Booked time of chairs, people, kits and bench places, by whether it could be planned anew and for whom. */
export interface CaseTimes {
  /** Time that planning one case anew gives back, by case and resource. */
  readonly movable: ReadonlyMap<string, BusyTimes>;
  /** What stays: begun, near, held, shared by several cases, or nobody's case. */
  readonly staying: BusyTimes;
  /** Visits among what stays. */
  readonly stayingAppointmentIds: ReadonlySet<string>;
  /** Everybody whose time was read. */
  readonly caseIds: readonly string[];
}

interface Row {
  readonly resourceId: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly caseIds: readonly string[];
  readonly stays: boolean;
  readonly appointmentId: string | null;
}

/** In one query, however many cases there are. */
export async function loadCaseTimes(
  tx: EntityManager,
  { fromMs, untilMs, movableFromMs, movingAppointmentIds = [], movable: which = 'booked' }: CaseTimesScope,
  now: Date,
): Promise<CaseTimes> {
  const rows: Row[] = await tx.query(
    `SELECT o.resource_id AS "resourceId", o.starts_at AS "startsAt", o.ends_at AS "endsAt",
       o.appointment_id AS "appointmentId", array_agg(DISTINCT own.case_id) AS "caseIds", bool_or(own.stays)
         OR o.held_until IS NOT NULL AND (o.appointment_id IS NULL OR o.appointment_id <> ALL ($5::uuid[]))
           AND NOT ($6 = 'provisional' AND h.kind IS NOT DISTINCT FROM 'provisional') AS stays
     FROM occupancy o JOIN resource r ON r.id = o.resource_id AND r.kind <> 'patient' LEFT JOIN hold h ON h.id = o.hold_id
     CROSS JOIN LATERAL (
       SELECT s.case_id, (a.state <> $6 OR a.starts_at < $3) AND a.id <> ALL ($5::uuid[]) OR c.state NOT IN ('open', 'enquiry') AS stays
         FROM appointment a JOIN appointment_stage x ON x.appointment_id = a.id JOIN stage s ON s.id = x.stage_id
         JOIN treatment_case c ON c.id = s.case_id WHERE a.id = o.appointment_id
       UNION ALL SELECT l.case_id, l.state NOT IN ('planned', 'ready') OR l.starts_at < $4 OR c.state NOT IN ('open', 'enquiry')
         FROM lab_step l JOIN treatment_case c ON c.id = l.case_id WHERE l.id = o.lab_step_id
       UNION ALL SELECT l.case_id, l.state NOT IN ('planned', 'ready') OR l.starts_at < $4 OR c.state NOT IN ('open', 'enquiry')
         FROM batch_member m JOIN lab_step l ON l.id = m.lab_step_id JOIN treatment_case c ON c.id = l.case_id
         WHERE m.batch_id = o.batch_id) own
     WHERE o.starts_at < $2 AND o.ends_at > $1 AND (o.held_until IS NULL OR o.held_until > $4)
     GROUP BY o.organisation_id, o.id, h.kind ORDER BY o.starts_at, o.id`,
    [new Date(fromMs), new Date(untilMs), new Date(movableFromMs), now, movingAppointmentIds, which],
  );
  const movable = new Map<string, Map<string, Interval[]>>();
  const staying = new Map<string, Interval[]>();
  const stayingAppointmentIds = new Set<string>();
  for (const { resourceId, startsAt, endsAt, caseIds, stays, appointmentId } of rows) {
    const [caseId] = caseIds;
    const isMovable = caseIds.length === 1 && caseId !== undefined && !stays;
    const times = isMovable ? entryOf(movable, caseId, () => new Map<string, Interval[]>()) : staying;
    if (!isMovable && appointmentId !== null) stayingAppointmentIds.add(appointmentId);
    entryOf(times, resourceId, () => []).push({ startMs: startsAt.getTime(), endMs: endsAt.getTime() });
  }
  return {
    movable,
    staying: new Map([...staying].map(([id, times]) => [id, normalise(times)])),
    stayingAppointmentIds,
    caseIds: [...new Set(rows.flatMap(({ caseIds }) => caseIds))],
  };
}

function entryOf<Key, Value>(map: Map<Key, Value>, key: Key, make: () => Value): Value {
  let value = map.get(key);
  if (value === undefined) map.set(key, (value = make()));
  return value;
}
