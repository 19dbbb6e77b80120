import type { EntityManager } from 'typeorm';

/** Calls about a case need not be made any more. */
export async function withdrawCalls(tx: EntityManager, caseId: string): Promise<void> {
  await tx.query(`UPDATE call_task SET state = 'done', version = version + 1 WHERE state = 'open' AND case_id = $1`, [
    caseId,
  ]);
}

/**
 * After a death: whatever would still be sent to the patient or said on the telephone is withdrawn, with the recalls and
 * the referrals that nobody has decided on.
 * The patient is marked first, so that nothing is made anew.
 */
export async function silencePatient(tx: EntityManager, patientId: string, diedOn: string): Promise<void> {
  await tx.query('UPDATE patient SET died_on = $2, version = version + 1 WHERE id = $1', [patientId, diedOn]);
  await tx.query(
    `UPDATE reminder SET state = 'withdrawn' WHERE state = 'scheduled'
       AND appointment_id IN (SELECT id FROM appointment WHERE patient_id = $1)`,
    [patientId],
  );
  await tx.query(
    `UPDATE notice SET state = 'withdrawn' WHERE state = 'scheduled' AND recipient = 'patient' AND patient_id = $1`,
    [patientId],
  );
  await tx.query(
    `UPDATE call_task SET state = 'done', version = version + 1 WHERE state = 'open' AND patient_id = $1`,
    [patientId],
  );
  await tx.query(
    `UPDATE recall SET state = 'withdrawn', version = version + 1 WHERE state IN ('due', 'booked')
       AND case_id IN (SELECT id FROM treatment_case WHERE patient_id = $1)`,
    [patientId],
  );
  await tx.query(
    `UPDATE referral_task SET state = 'resolved', version = version + 1 WHERE state = 'open'
       AND case_id IN (SELECT id FROM treatment_case WHERE patient_id = $1)`,
    [patientId],
  );
}
