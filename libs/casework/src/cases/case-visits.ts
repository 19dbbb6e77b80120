import type { AppointmentState } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';

/** The visit at which a stage takes place, took place, or was missed. */
export interface StageVisit {
  readonly stageId: string;
  readonly appointmentId: string;
  readonly state: AppointmentState;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly clinicName: string;
  readonly zone: string;
  readonly clinicianName: string;
}

/**
 * The visit of each stage, by stage. Of several the last counts; one that was missed only when no other stands in its
 * place, one that is held only while its hold lasts.
 */
export async function stageVisits(
  tx: EntityManager,
  caseIds: readonly string[],
  now: Date,
): Promise<Map<string, StageVisit>> {
  const visits: StageVisit[] = await tx.query(
    `SELECT g.id AS "stageId", a.id AS "appointmentId", a.state, a.starts_at AS "startsAt", a.ends_at AS "endsAt",
       l.name AS "clinicName", l.zone, p.name AS "clinicianName"
     FROM stage g
     JOIN appointment_stage s ON s.stage_id = g.id
     JOIN appointment a ON a.id = s.appointment_id
     JOIN clinic l ON l.id = a.clinic_id
     JOIN practitioner p ON p.id = a.clinician_id
     LEFT JOIN hold h ON h.id = a.hold_id
     WHERE g.case_id = ANY ($1::uuid[]) AND a.state <> 'cancelled'
       AND (a.state <> 'held' OR (h.state = 'active' AND h.expires_at > $2))
     ORDER BY a.state <> 'missed', a.starts_at, a.id`,
    [caseIds, now],
  );
  return new Map(visits.map((visit) => [visit.stageId, visit]));
}
