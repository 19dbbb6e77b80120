import type { EntityManager } from 'typeorm';

/** A visit with what is needed to tell its patient of it. */
export interface Visit {
  readonly organisationId: string;
  readonly id: string;
  readonly patientId: string;
  /** Null when it serves no stage of a case. */
  readonly caseId: string | null;
  readonly caseNumber: string | null;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly state: string;
  readonly uid: string;
  readonly sequence: number;
  readonly clinicName: string;
  /** The clinic's number; its name where none is known. */
  readonly clinicPhone: string;
  readonly clinicZone: string;
  /** The clinic's address, or the patient's own for a visit at home. */
  readonly address: string;
  readonly patientZone: string;
  readonly locale: string;
  readonly hasDied: boolean;
  /** Null once the identity was erased. */
  readonly givenName: string | null;
  readonly mail: string | null;
  readonly consents: readonly ('mail' | 'phone')[];
}

const SELECTED = `
  SELECT a.organisation_id AS "organisationId", a.id, a.patient_id AS "patientId", c.id AS "caseId",
    c.number AS "caseNumber", a.starts_at AS "startsAt", a.ends_at AS "endsAt", a.state, a.uid, a.sequence,
    l.name AS "clinicName", coalesce(l.phone, l.name) AS "clinicPhone", l.zone AS "clinicZone",
    CASE WHEN h.id IS NULL THEN l.address ELSE coalesce(i.address, l.name) END AS address,
    p.zone AS "patientZone", p.locale, p.died_on IS NOT NULL AS "hasDied", i.given_name AS "givenName", i.mail,
    ARRAY(SELECT k.channel FROM consent k WHERE k.patient_id = p.id AND k.withdrawn_at IS NULL) AS consents
  FROM appointment a
  JOIN patient p ON p.id = a.patient_id
  JOIN clinic l ON l.id = a.clinic_id
  LEFT JOIN patient_identity i ON i.patient_id = p.id
  LEFT JOIN home_visit h ON h.appointment_id = a.id
  LEFT JOIN LATERAL (
    SELECT t.id, t.number FROM appointment_stage s JOIN stage g ON g.id = s.stage_id JOIN treatment_case t ON t.id = g.case_id
    WHERE s.appointment_id = a.id ORDER BY t.number LIMIT 1) c ON true`;

/** Earliest first; unknown ids are left out. */
export function loadVisits(tx: EntityManager, appointmentIds: readonly string[]): Promise<Visit[]> {
  return tx.query(`${SELECTED} WHERE a.id = ANY ($1::uuid[]) ORDER BY a.starts_at, a.id`, [appointmentIds]);
}

/** Visits of a case that are still to come, provisional ones included. */
export function loadComingVisits(tx: EntityManager, caseId: string, now: Date): Promise<Visit[]> {
  return tx.query(
    `${SELECTED} WHERE a.starts_at > $2 AND a.state IN ('booked', 'provisional')
       AND EXISTS (SELECT FROM appointment_stage s JOIN stage g ON g.id = s.stage_id
         WHERE s.appointment_id = a.id AND g.case_id = $1)
     ORDER BY a.starts_at, a.id`,
    [caseId, now],
  );
}

/** Mail reaches a patient who agreed to it and whose address is known; all others are called. */
export function isReachedByMail({ consents, mail }: Pick<Visit, 'consents' | 'mail'>): boolean {
  return mail !== null && consents.includes('mail');
}
