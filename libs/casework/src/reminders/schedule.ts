import { dueReminders } from '@archwright/notices';
import { Organisation, enqueueOutbox, uuidv7, type OrganisationSettings } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { announceChanges, announceVisits } from './announce.js';
import { messageDomainOf } from './message-domain.js';
import { isReachedByMail, loadVisits, type Visit } from './visits.js';

/**
 * After visits were booked: their reminders, by the practice's lead times and the patient's consent and zone, and one
 * itinerary to the patient. May be called again for the same visits: an intent exists once per visit, channel and lead.
 */
export async function scheduleReminders(
  tx: EntityManager,
  appointmentIds: readonly string[],
  now: Date,
): Promise<void> {
  const visits = await loadVisits(tx, appointmentIds);
  await deriveAll(tx, visits, now);
  await announceVisits(tx, visits, now);
}

/**
 * After visits were moved or cancelled: raises their calendar sequence, withdraws or renews their reminders, and tells
 * the patient. To be called once per change, in its transaction, after the visits were written.
 */
export async function reconcileReminders(
  tx: EntityManager,
  appointmentIds: readonly string[],
  now: Date,
): Promise<void> {
  await tx.query('UPDATE appointment SET sequence = sequence + 1 WHERE id = ANY ($1::uuid[])', [appointmentIds]);
  const visits = await loadVisits(tx, appointmentIds);
  await closeCalls(tx, appointmentIds);
  await deriveAll(tx, visits, now);
  await announceChanges(tx, visits, now);
}

/** A call about a time that no longer holds need not be made; the renewed reminder opens it again when it is due. */
async function closeCalls(tx: EntityManager, appointmentIds: readonly string[]): Promise<void> {
  await tx.query(
    `UPDATE call_task SET state = 'done', version = version + 1
     WHERE state = 'open' AND reminder_id IN (SELECT id FROM reminder WHERE appointment_id = ANY ($1::uuid[]))`,
    [appointmentIds],
  );
}

async function deriveAll(tx: EntityManager, visits: readonly Visit[], now: Date): Promise<void> {
  const [first] = visits;
  if (first === undefined) return;
  const { settings } = await tx.findOneByOrFail(Organisation, { id: first.organisationId });
  await tx.query(
    `UPDATE reminder SET state = 'withdrawn' WHERE state = 'scheduled' AND appointment_id = ANY ($1::uuid[])`,
    [visits.map(({ id }) => id)],
  );
  for (const visit of visits) {
    if (visit.state === 'booked' && !visit.hasDied) await derive(tx, visit, settings, now);
  }
}

async function derive(tx: EntityManager, visit: Visit, settings: OrganisationSettings, now: Date): Promise<void> {
  const byMail = isReachedByMail(visit);
  const due = dueReminders({
    visitStartsMs: visit.startsAt.getTime(),
    leadTimes: byMail ? settings.reminderLeadMinutes.mail : settings.reminderLeadMinutes.phone,
    quietHours: settings.quietHours,
    patientZone: visit.patientZone,
    clinicZone: visit.clinicZone,
    consents: visit.consents,
    mailKnown: visit.mail !== null,
    nowMs: now.getTime(),
  });
  for (const { channel, leadMinutes, dueAtMs } of due) {
    await renew(tx, visit, { channel, leadMinutes, dueAt: new Date(dueAtMs) });
  }
}

interface Intent {
  readonly channel: 'mail' | 'phone';
  readonly leadMinutes: number;
  readonly dueAt: Date;
}

/** The message id names the visit's sequence: after a move the mail is another one, which no receiver may drop as a copy. */
async function renew(tx: EntityManager, visit: Visit, { channel, leadMinutes, dueAt }: Intent): Promise<void> {
  const renewed: { id: string }[] = await tx.query(
    `INSERT INTO reminder (id, appointment_id, channel, lead_minutes, message_id, due_at, state, sequence)
     VALUES ($1::uuid, $2, $3, $4, '<' || $1::text || '.' || $6::text || '@' || $7::text || '>', $5, 'scheduled', $6::integer)
     ON CONFLICT ON CONSTRAINT reminder_one_intent DO UPDATE SET
       message_id = '<' || reminder.id::text || '.' || excluded.sequence::text || '@' || $7::text || '>', due_at = excluded.due_at,
       state = 'scheduled', sequence = excluded.sequence, attempts = 0, sent_at = NULL, last_error = NULL
     WHERE reminder.sequence < excluded.sequence OR reminder.state = 'withdrawn'
     RETURNING id`,
    [uuidv7(), visit.id, channel, leadMinutes, dueAt, String(visit.sequence), messageDomainOf(visit.organisationId)],
  );
  for (const { id } of renewed) {
    await enqueueOutbox(tx, 'deliver-reminder', { organisationId: visit.organisationId, reminderId: id }, dueAt);
  }
}
