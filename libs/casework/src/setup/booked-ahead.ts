import type { EntityManager } from 'typeorm';

/** Booked or held time to come, with what it stands on. */
export interface BookedVisit {
  readonly kind: 'visit';
  readonly appointmentId: string;
  readonly caseId: string | null;
  readonly caseNumber: string;
  readonly patientName: string | null;
  readonly clinicId: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly chairId: string | null;
  readonly clinicianId: string;
  readonly assistantId: string | null;
  readonly kitIds: readonly string[];
}

export interface BookedWork {
  readonly kind: 'lab-work';
  readonly caseId: string;
  readonly caseNumber: string;
  readonly workCentreId: string;
  readonly placeId: string;
  /** One hands-on stretch. */
  readonly startMs: number;
  readonly endMs: number;
}

export interface BookedWay {
  readonly kind: 'courier';
  readonly caseId: string;
  readonly caseNumber: string;
  readonly courierId: string;
  readonly direction: 'to-lab' | 'to-clinic';
  readonly startMs: number;
  readonly endMs: number;
}

export type BookedTime = BookedVisit | BookedWork | BookedWay;

/** Everything booked from now on that hours, people, benches and couriers carry, by start. */
export async function bookedAhead(tx: EntityManager, now: Date): Promise<BookedTime[]> {
  const all = [...(await visits(tx, now)), ...(await work(tx, now)), ...(await ways(tx, now))];
  return all.sort((one, other) => one.startMs - other.startMs);
}

function visits(tx: EntityManager, now: Date): Promise<BookedVisit[]> {
  return tx.query(
    `SELECT 'visit' AS kind, a.id AS "appointmentId", c.id AS "caseId", coalesce(c.number, '') AS "caseNumber",
       i.given_name || ' ' || i.family_name AS "patientName", a.clinic_id AS "clinicId", a.chair_id AS "chairId",
       a.clinician_id AS "clinicianId", a.assistant_id AS "assistantId",
       ${ms('a.starts_at')} AS "startMs", ${ms('a.ends_at')} AS "endMs",
       coalesce((SELECT array_agg(o.resource_id) FROM occupancy o JOIN kit k ON k.id = o.resource_id
         WHERE o.appointment_id = a.id), '{}') AS "kitIds"
     FROM appointment a LEFT JOIN patient_identity i ON i.patient_id = a.patient_id
       LEFT JOIN LATERAL (SELECT t.id, t.number FROM appointment_stage s JOIN stage g ON g.id = s.stage_id
         JOIN treatment_case t ON t.id = g.case_id WHERE s.appointment_id = a.id ORDER BY t.number LIMIT 1) c ON true
     WHERE a.starts_at > $1 AND a.state IN ('provisional', 'booked')`,
    [now],
  );
}

/** Hands-on stretches only: what sets or cures runs on whatever the hours say. */
function work(tx: EntityManager, now: Date): Promise<BookedWork[]> {
  return tx.query(
    `SELECT 'lab-work' AS kind, s.case_id AS "caseId", c.number AS "caseNumber", s.work_centre_id AS "workCentreId",
       s.place_id AS "placeId", ${ms("(g->>'startsAt')::timestamptz")} AS "startMs",
       ${ms("(g->>'endsAt')::timestamptz")} AS "endMs"
     FROM lab_step s JOIN treatment_case c ON c.id = s.case_id CROSS JOIN jsonb_array_elements(s.segments) g
     WHERE s.state IN ('planned', 'ready') AND s.hold_id IS NULL AND s.place_id IS NOT NULL
       AND s.starts_at > $1 AND g->>'kind' = 'hands-on'`,
    [now],
  );
}

function ways(tx: EntityManager, now: Date): Promise<BookedWay[]> {
  return tx.query(
    `SELECT 'courier' AS kind, l.case_id AS "caseId", c.number AS "caseNumber", l.courier_id AS "courierId", l.direction,
       ${ms('l.departs_at')} AS "startMs", ${ms('l.arrives_at')} AS "endMs"
     FROM courier_leg l JOIN treatment_case c ON c.id = l.case_id
     WHERE l.departs_at > $1 AND l.state = 'planned' AND l.courier_id IS NOT NULL`,
    [now],
  );
}

const ms = (instant: string): string => `(extract(epoch FROM ${instant}) * 1000)::float8`;
