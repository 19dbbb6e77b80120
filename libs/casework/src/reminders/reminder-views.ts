import type { ReminderView } from '@archwright/contracts';
import { TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';

/** Reminders of all visits of a case, earliest first. */
export async function remindersOfCase(tx: EntityManager, actor: Actor, caseId: string): Promise<ReminderView[]> {
  const treated = await tx.findOneBy(TreatmentCase, { id: caseId });
  const isSeen =
    treated !== null &&
    (actor.role === 'administrator' || treated.clinicIds.some((clinicId) => actor.clinicIds.includes(clinicId)));
  if (!isSeen) throw new RecordNotFoundError('case', caseId);
  const rows: (Omit<ReminderView, 'dueAt' | 'sentAt'> & { dueAt: Date; sentAt: Date | null })[] = await tx.query(
    `SELECT r.id, r.appointment_id AS "appointmentId", l.zone, r.channel, r.lead_minutes AS "leadMinutes", r.due_at AS "dueAt",
       r.state, r.sent_at AS "sentAt"
     FROM reminder r JOIN appointment a ON a.id = r.appointment_id JOIN clinic l ON l.id = a.clinic_id
     WHERE EXISTS (
       SELECT FROM appointment_stage s JOIN stage g ON g.id = s.stage_id
       WHERE s.appointment_id = r.appointment_id AND g.case_id = $1)
     ORDER BY r.due_at, r.id`,
    [caseId],
  );
  return rows.map((row) => ({
    ...row,
    dueAt: row.dueAt.toISOString(),
    sentAt: row.sentAt?.toISOString() ?? null,
  }));
}
