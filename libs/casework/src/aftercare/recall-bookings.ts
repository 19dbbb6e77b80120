import type { EntityManager } from 'typeorm';

/** Checks that were due and whose visit is booked now are no longer "due but not booked". */
export async function bookRecalls(tx: EntityManager, appointmentIds: readonly string[]): Promise<void> {
  await tx.query(
    `UPDATE recall r SET state = 'booked', appointment_id = s.appointment_id, version = r.version + 1
     FROM appointment_stage s JOIN stage g ON g.id = s.stage_id
     WHERE s.appointment_id = ANY ($1::uuid[]) AND r.case_id = g.case_id AND r.kind = g.code AND r.state = 'due'`,
    [appointmentIds],
  );
}

/** A check whose visit does not take place is due as before. */
export async function freeRecalls(tx: EntityManager, appointmentIds: readonly string[]): Promise<void> {
  await tx.query(
    `UPDATE recall SET state = 'due', appointment_id = NULL, version = version + 1
     WHERE appointment_id = ANY ($1::uuid[]) AND state = 'booked'`,
    [appointmentIds],
  );
}
