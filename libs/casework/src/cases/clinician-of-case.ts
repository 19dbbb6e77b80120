import { UserAccount } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';

/** The account of the clinician who treats the case: the one asked for, else the one of its next visit. Null: neither. */
export async function clinicianOfCase(tx: EntityManager, caseId: string): Promise<UserAccount | null> {
  const [row]: { practitionerId: string | null }[] = await tx.query(
    `SELECT coalesce(c.clinician_id, (
       SELECT a.clinician_id FROM appointment a JOIN appointment_stage s ON s.appointment_id = a.id
         JOIN stage g ON g.id = s.stage_id
       WHERE g.case_id = c.id AND a.state NOT IN ('cancelled', 'missed') ORDER BY a.starts_at DESC LIMIT 1)) AS "practitionerId"
     FROM treatment_case c WHERE c.id = $1`,
    [caseId],
  );
  if (row?.practitionerId == null) return null;
  return tx.findOneBy(UserAccount, { practitionerId: row.practitionerId, disabledAt: IsNull() });
}
