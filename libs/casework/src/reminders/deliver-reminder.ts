import type { DeliverReminderPayload, Told } from '@archwright/contracts';
import { Organisation, Reminder, uuidv7 } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { inEnglish, told } from '../tell.js';
import type { Post } from './post.js';
import { sendOnce, type Outcome } from './send-once.js';
import { reminderMail } from './visit-mail.js';
import { loadVisits, type Visit } from './visits.js';

interface Due {
  readonly reminder: Reminder;
  readonly visit: Visit;
}

/**
 * Sends one due reminder, or puts its call on the list. Does nothing when it is not due, withdrawn or already out; a
 * reminder of a visit that no longer stands is withdrawn.
 *
 * @throws {TemporaryMailError} when the mail server is to be asked again
 */
export function deliverReminder(
  db: DataSource,
  post: Post,
  { organisationId, reminderId }: DeliverReminderPayload,
  now: Date,
): Promise<void> {
  return sendOnce<Due>(
    db,
    {
      table: 'reminder',
      organisationId,
      id: reminderId,
      load: loadDue,
      send: (tx, due) => remind(tx, post, due, now),
      refused: (tx, { reminder, visit }) => putOnCallList(tx, visit, reminder.id, told('call-reminder-refused'), now),
    },
    now,
  );
}

async function loadDue(tx: EntityManager, id: string): Promise<Due | null> {
  const reminder = await tx.findOneBy(Reminder, { id });
  const [visit] = reminder === null ? [] : await loadVisits(tx, [reminder.appointmentId]);
  return reminder === null || visit === undefined ? null : { reminder, visit };
}

async function remind(tx: EntityManager, post: Post, { reminder, visit }: Due, now: Date): Promise<Outcome> {
  if (visit.state !== 'booked' || visit.hasDied || visit.startsAt <= now) return { state: 'withdrawn' };
  if (reminder.channel === 'phone') {
    await putOnCallList(tx, visit, reminder.id, told('call-reminder'), now);
  } else {
    const { settings } = await tx.findOneByOrFail(Organisation, { id: visit.organisationId });
    await post.mailer.send(reminderMail(post, visit, reminder.messageId, settings, now));
  }
  return { state: 'sent' };
}

/** One call per reminder: a renewed one opens it again. */
async function putOnCallList(
  tx: EntityManager,
  visit: Visit,
  reminderId: string,
  what: Told,
  now: Date,
): Promise<void> {
  await tx.query(
    `INSERT INTO call_task (id, patient_id, case_id, appointment_id, reminder_id, reason, told, state, due_at, created_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, 'open', $8, $8)
     ON CONFLICT ON CONSTRAINT call_task_once_per_reminder DO UPDATE SET
       state = 'open', reason = excluded.reason, told = excluded.told, due_at = excluded.due_at, version = call_task.version + 1`,
    [uuidv7(), visit.patientId, visit.caseId, visit.id, reminderId, inEnglish(what), JSON.stringify(what), now],
  );
}
