import { reconcileReminders, scheduleReminders } from '@archwright/casework';
import { Appointment, createDataSource, inOrganisation } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';
import { queueUrl } from '../support/queue.js';
import { until } from '../support/until.js';
import { NOW, aPractice, type TestPractice } from './records/records-practice.js';
import { aBookedPatient, moveVisit, readOne, type BookedPatient } from './reminders-patients.js';
import { PostOffice } from './reminders-post-office.js';
import { WorkerRun } from './reminders-worker.js';

interface ReminderRow {
  readonly id: string;
  readonly state: string;
  readonly attempts: number;
  readonly messageId: string;
  readonly dueAt: Date;
  readonly sequence: number;
  readonly lastError: string | null;
}

const DAY_MS = 86_400_000;
/** The practice of these tests reminds two days before. */
const LEAD_MS = 2 * DAY_MS;

describe(`reminders, with the queue in ${queueUrl() === null ? 'the database' : 'Redis'}`, () => {
  let database: SuiteDatabase;
  let db: DataSource;
  let practice: TestPractice;
  let office: PostOffice;
  let worker: WorkerRun;
  let daysAhead = 4;

  beforeAll(async () => {
    database = await createSuiteDatabase();
    db = await createDataSource({ url: database.url, applicationName: 'suite', connections: 4 }).initialize();
    practice = await aPractice(db);
    office = await PostOffice.open();
    worker = new WorkerRun(database.url, office.url, NOW);
    await worker.start();
  }, 90_000);
  afterAll(async () => {
    await worker.remove();
    await office.close();
    await db.destroy();
    await database.drop();
  });

  const inPractice = <Result>(work: (tx: EntityManager) => Promise<Result>) =>
    inOrganisation(db, practice.organisationId, work);

  const reminderOf = ({ appointmentId }: BookedPatient) =>
    readOne<ReminderRow>(
      db,
      practice,
      `SELECT id, state, attempts, message_id AS "messageId", due_at AS "dueAt", sequence, last_error AS "lastError"
       FROM reminder WHERE appointment_id = $1`,
      [appointmentId],
    );

  /** A visit at 10:00 in the clinic, some days after whatever the clock shows by now. */
  async function book(consents?: ('mail' | 'phone')[]): Promise<BookedPatient & { startsAt: Date }> {
    daysAhead += 4;
    const startsAt = new Date(Date.parse('2027-01-04T09:00:00Z') + daysAhead * DAY_MS);
    const patient = await inPractice(async (tx) => {
      const booked = await aBookedPatient(tx, practice, { startsAt, ...(consents ? { consents } : {}) });
      await scheduleReminders(tx, [booked.appointmentId], worker.clock.now());
      return booked;
    });
    return { ...patient, startsAt };
  }

  const moveClockTo = (startsAt: Date) => {
    worker.clock.moveTo(new Date(startsAt.getTime() - LEAD_MS + 60_000));
  };
  const isSent = (patient: BookedPatient) => async () => (await reminderOf(patient)).state === 'sent';

  it('tells the patient of all visits once they are booked, and names no treatment', async () => {
    const patient = await book();
    await until(() => office.mailsTo(patient.mail).length === 1);
    const [mail] = office.mailsTo(patient.mail);
    expect(mail?.subject).toBe('Your appointments');
    expect(mail?.calendar).toContain('METHOD:PUBLISH');
    expect(mail?.calendar).toContain(`DTSTART:${calendarTime(patient.startsAt)}`);
  });

  it('reminds when it is due, once, with the visit for the calendar, under the id that was written with the booking', async () => {
    const patient = await book();
    const planned = await reminderOf(patient);
    expect(planned).toMatchObject({ state: 'scheduled', attempts: 0 });
    expect(planned.dueAt).toEqual(new Date(patient.startsAt.getTime() - LEAD_MS));
    moveClockTo(patient.startsAt);
    await until(isSent(patient));
    const mails = office.mailsTo(patient.mail).filter(({ subject }) => subject.startsWith('Reminder'));
    expect(mails.map(({ messageId }) => messageId)).toEqual([planned.messageId]);
    expect(mails[0]?.calendar).toContain('METHOD:REQUEST');
    expect(mails[0]?.calendar).toContain('SEQUENCE:0');
    expect((await reminderOf(patient)).attempts).toBe(1);
  });

  it('says the new time and the old one after a move, and reminds of the new one under another id', async () => {
    const patient = await book();
    const planned = await reminderOf(patient);
    const startsAt = new Date(patient.startsAt.getTime() + DAY_MS);
    await inPractice(async (tx) => {
      await moveVisit(tx, patient.appointmentId, startsAt);
      await reconcileReminders(tx, [patient.appointmentId], worker.clock.now());
    });
    await until(() => office.mailsTo(patient.mail).some(({ subject }) => subject.includes('moved')));
    const moved = office.mailsTo(patient.mail).find(({ subject }) => subject.includes('moved'));
    expect(moved?.calendar).toContain('METHOD:REQUEST');
    expect(moved?.calendar).toContain('SEQUENCE:1');
    expect(moved?.calendar).toContain(`DTSTART:${calendarTime(startsAt)}`);
    expect(moved?.text).toContain(`It was before: ${wording(patient.startsAt)}`);
    moveClockTo(startsAt);
    await until(isSent(patient));
    const reminder = office.mailsTo(patient.mail).at(-1);
    expect(reminder?.calendar).toContain('SEQUENCE:1');
    expect(reminder?.messageId).not.toBe(planned.messageId);
    expect(office.mailsTo(patient.mail).filter(({ subject }) => subject.startsWith('Reminder'))).toHaveLength(1);
  });

  it('takes a cancelled visit out of the calendar and reminds of it no more', async () => {
    const patient = await book();
    await until(() => office.mailsTo(patient.mail).length === 1);
    await inPractice(async (tx) => {
      await tx.update(Appointment, { id: patient.appointmentId }, { state: 'cancelled' });
      await reconcileReminders(tx, [patient.appointmentId], worker.clock.now());
    });
    await until(() => office.mailsTo(patient.mail).length === 2);
    const cancelled = office.mailsTo(patient.mail).at(-1);
    expect(cancelled?.subject).toBe('Your appointment is cancelled');
    expect(cancelled?.calendar).toContain('METHOD:CANCEL');
    expect(cancelled?.calendar).toContain('SEQUENCE:1');
    expect(cancelled?.calendar).toContain('STATUS:CANCELLED');
    const other = await book();
    moveClockTo(other.startsAt);
    await until(isSent(other));
    expect((await reminderOf(patient)).state).toBe('withdrawn');
    expect(office.mailsTo(patient.mail)).toHaveLength(2);
  });

  it('tries again what the mail server could not take, under the same id', async () => {
    const patient = await book();
    await until(() => office.mailsTo(patient.mail).length === 1);
    office.refusals.push({ code: 451 });
    moveClockTo(patient.startsAt);
    await until(isSent(patient));
    const { attempts, messageId } = await reminderOf(patient);
    expect(attempts).toBe(2);
    expect(office.mailsTo(patient.mail).at(-1)?.messageId).toBe(messageId);
  });

  it('asks the front desk to call when the address is refused', async () => {
    const patient = await book();
    await until(() => office.mailsTo(patient.mail).length === 1);
    office.refusals.push({ code: 550 });
    moveClockTo(patient.startsAt);
    await until(async () => (await reminderOf(patient)).state === 'failed');
    const { id, attempts, lastError } = await reminderOf(patient);
    expect({ attempts, lastError }).toEqual({ attempts: 1, lastError: 'notices.mail-refused' });
    const task = await readOne<object>(db, practice, 'SELECT state, patient_id FROM call_task WHERE reminder_id = $1', [
      id,
    ]);
    expect(task).toEqual({ state: 'open', patient_id: patient.patientId });
  });

  it('asks for a call instead of a mail where the patient agreed to no mail', async () => {
    const patient = await book(['phone']);
    const task = await readOne<{ reason: string }>(
      db,
      practice,
      `SELECT reason FROM call_task WHERE patient_id = $1 AND reminder_id IS NULL`,
      [patient.patientId],
    );
    expect(task.reason).toContain('Tell the patient the times of case');
    expect(office.mailsTo(patient.mail)).toEqual([]);
  });

  it('loses nothing when the worker is killed while the mail server still thinks', async () => {
    const patient = await book();
    await until(() => office.mailsTo(patient.mail).length === 1);
    const { messageId } = await reminderOf(patient);
    office.isSilent = true;
    moveClockTo(patient.startsAt);
    await until(() => office.offered.includes(messageId));
    await worker.stop('SIGKILL');
    expect(await reminderOf(patient)).toMatchObject({ state: 'scheduled', attempts: 1 });
    office.isSilent = false;
    await worker.start();
    await until(isSent(patient), 90_000);
    expect(await reminderOf(patient)).toMatchObject({ attempts: 2, messageId });
    expect(office.offered.filter((id) => id === messageId)).toHaveLength(2);
    expect(office.received.filter((mail) => mail.messageId === messageId)).toHaveLength(1);
  }, 180_000);

  it('sends what was committed while no worker ran, and what the queue forgot', async () => {
    await worker.stop('SIGKILL');
    const patient = await book();
    moveClockTo(patient.startsAt);
    const { id } = await reminderOf(patient);
    // As if the queue had taken the job long ago and then lost it.
    await inPractice((tx) =>
      tx.query(`UPDATE outbox SET dispatched_at = '2027-01-01T00:00:00Z' WHERE payload ->> 'reminderId' = $1`, [id]),
    );
    await worker.start();
    await until(isSent(patient), 60_000);
    expect(office.mailsTo(patient.mail).map(({ subject }) => subject)).toHaveLength(2);
  }, 120_000);
});

/** As iCalendar writes an instant. */
const calendarTime = (at: Date): string => at.toISOString().replace(/[-:]|\.\d+/g, '');

/** As an English mail writes it, in the clinic's zone. */
function wording(at: Date): string {
  return new Intl.DateTimeFormat('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone: 'Europe/Berlin',
  }).format(at);
}
