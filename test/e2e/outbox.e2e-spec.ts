import {
  IdempotencyKeys,
  deliverReminder,
  relayOutbox,
  scheduleReminders,
  serviceActor,
  sweep,
  type Post,
} from '@archwright/casework';
import { answerOnce } from '@archwright/platform';
import {
  Appointment,
  Hold,
  IdempotencyKey,
  Outbox,
  Reminder,
  TreatmentCase,
  createDataSource,
  enqueueOutbox,
  inOrganisation,
  recordAudit,
  uuidv7,
  verifyAudit,
} from '@archwright/records';
import { IsNull, Not, type DataSource, type EntityManager } from 'typeorm';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';
import { NOW, aHold, aPractice, at, type TestPractice } from './records/records-practice.js';
import { aLabCase } from './lab-case.js';
import { aBookedPatient, readOne } from './reminders-patients.js';

const later = (minutes: number) => new Date(NOW.getTime() + minutes * 60_000);

/** Stands in for the queue, to see what reaches it. */
class SeenQueue {
  readonly added: { name: string; payload: unknown }[] = [];

  async enqueue(name: string, payload: unknown): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, 5));
    this.added.push({ name, payload });
  }
}

describe('the outbox', () => {
  let database: SuiteDatabase;
  let db: DataSource;
  let practice: TestPractice;
  let queue: SeenQueue;

  beforeAll(async () => {
    database = await createSuiteDatabase();
    db = await createDataSource({ url: database.url, applicationName: 'suite', connections: 8 }).initialize();
  });
  afterAll(async () => {
    await db.destroy();
    await database.drop();
  });
  beforeEach(async () => {
    practice = await aPractice(db);
    queue = new SeenQueue();
  });

  const inPractice = <Result>(work: (tx: EntityManager) => Promise<Result>) =>
    inOrganisation(db, practice.organisationId, work);
  const relay = (now: Date) => relayOutbox(db, queue, practice.organisationId, now);
  const note = (noticeId: string, dueAt: Date, kind = 'deliver-notice') =>
    inPractice((tx) => enqueueOutbox(tx, kind, { organisationId: practice.organisationId, noticeId }, dueAt));

  it('gives the queue what is due, once, and keeps the rest', async () => {
    await note('a', NOW);
    await note('b', later(1));
    expect((await relay(NOW)).dispatched).toBe(1);
    expect((await relay(NOW)).dispatched).toBe(0);
    expect((await relay(later(1))).dispatched).toBe(1);
    expect(queue.added.map(({ payload }) => (payload as { noticeId: string }).noticeId)).toEqual(['a', 'b']);
  });

  it('lets several relays share the work, each row with one of them', async () => {
    const ids = Array.from({ length: 250 }, (_, index) => `n${String(index)}`);
    await inPractice(async (tx) => {
      for (const noticeId of ids) {
        await enqueueOutbox(tx, 'deliver-notice', { organisationId: practice.organisationId, noticeId }, NOW);
      }
    });
    const rounds = await Promise.all([relay(NOW), relay(NOW), relay(NOW), relay(NOW)]);
    // Who gets how many depends on who comes first; a row that another one holds is left to it.
    expect(rounds.reduce((sum, { dispatched }) => sum + dispatched, 0)).toBe(250);
    expect(new Set(queue.added.map(({ payload }) => (payload as { noticeId: string }).noticeId)).size).toBe(250);
  });

  it('keeps what the queue did not take', async () => {
    await note('a', NOW);
    const broken = { enqueue: () => Promise.reject(new Error('the queue is away')) };
    await expect(relayOutbox(db, broken, practice.organisationId, NOW)).rejects.toThrow('the queue is away');
    expect((await relay(NOW)).dispatched).toBe(1);
  });

  it('sees nothing of another organisation', async () => {
    await note('a', NOW);
    const other = await aPractice(db);
    expect(await relayOutbox(db, queue, other.organisationId, NOW)).toEqual({
      dispatched: 0,
      postponed: 0,
      isFull: false,
    });
  });

  it('creates again what the queue forgot, after a grace, and not twice', async () => {
    const startsAt = at('09:00', 3);
    await inPractice(async (tx) => {
      const { appointmentId } = await aBookedPatient(tx, practice, { startsAt });
      await scheduleReminders(tx, [appointmentId], NOW);
    });
    await relay(NOW);
    const { recreated: atOnce } = await sweep(db, practice.organisationId, NOW);
    expect(atOnce).toBe(0);
    const { recreated } = await sweep(db, practice.organisationId, later(2));
    expect(recreated).toBe(1);
    expect((await sweep(db, practice.organisationId, later(2))).recreated).toBe(0);
    await relay(later(2));
    const [first, second, ...more] = queue.added.filter(({ name }) => name === 'deliver-notice');
    expect(more).toEqual([]);
    expect(second?.payload).toEqual(first?.payload);
    expect(await inPractice((tx) => tx.countBy(Outbox, { kind: 'deliver-notice' }))).toBe(1);
  });

  it('forgets dispatched rows after a week', async () => {
    await note('a', NOW);
    await relay(NOW);
    const dispatched = () => inPractice((tx) => tx.countBy(Outbox, { dispatchedAt: Not(IsNull()) }));
    await sweep(db, practice.organisationId, later(6 * 1440));
    expect(await dispatched()).toBe(1);
    await sweep(db, practice.organisationId, later(8 * 1440));
    expect(await dispatched()).toBe(0);
  });

  it('forgets answers kept for repeated calls after a day', async () => {
    const actor = { ...serviceActor(practice.organisationId), userId: uuidv7() };
    const call = (key: string, now: Date) =>
      inPractice((tx) =>
        answerOnce(new IdempotencyKeys(actor, 'test', now), tx, { key, fingerprint: 'a' }, () => Promise.resolve(1)),
      );
    await call('yesterday', NOW);
    await call('today', later(1));
    expect((await sweep(db, practice.organisationId, later(1440))).forgotten).toBe(0);
    expect((await sweep(db, practice.organisationId, later(1441))).forgotten).toBe(1);
    expect((await inPractice((tx) => tx.find(IdempotencyKey))).map(({ key }) => key)).toEqual(['today']);
  });

  it('ends holds that have run out, with the visits they kept', async () => {
    const holdId = await inPractice(async (tx) => {
      const { caseId } = await aLabCase(tx, practice);
      const { patientId } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
      const id = await aHold(tx, caseId, later(15));
      await tx.insert(Appointment, {
        id: uuidv7(),
        patientId,
        clinicId: practice.clinicId,
        clinicianId: practice.clinicianIds[0],
        holdId: id,
        startsAt: at('09:00'),
        endsAt: at('10:00'),
        state: 'held',
        uid: `${id}@example.test`,
      });
      return id;
    });
    expect((await sweep(db, practice.organisationId, later(10))).expired).toBe(0);
    expect((await sweep(db, practice.organisationId, later(15))).expired).toBe(1);
    const { state } = await inPractice((tx) => tx.findOneByOrFail(Hold, { id: holdId }));
    expect(state).toBe('expired');
    expect(await inPractice((tx) => tx.countBy(Appointment, { holdId }))).toBe(0);
  });

  it('seals the audit trail', async () => {
    const entry = { actorId: null, action: 'test', subjectKind: 'case', subjectId: null, details: {} };
    await inPractice((tx) => recordAudit(tx, { ...entry, at: NOW }));
    expect((await sweep(db, practice.organisationId, NOW)).sealed).toBe(1);
    expect(await inPractice(verifyAudit)).toMatchObject({ sealed: 1, unsealed: 0, broken: null });
  });

  it('sends one mail, however many workers try at once', async () => {
    const reminder = await inPractice(async (tx) => {
      const { appointmentId } = await aBookedPatient(tx, practice, { startsAt: at('09:00', 20) });
      await scheduleReminders(tx, [appointmentId], NOW);
      return tx.findOneByOrFail(Reminder, { appointmentId });
    });
    const sent: string[] = [];
    const post: Post = {
      mailer: {
        send: async ({ messageId }) => {
          sent.push(messageId);
          await new Promise((resolve) => setTimeout(resolve, 200));
        },
        close: () => undefined,
      },
      from: { mail: 'appointments@practice.example', name: 'Appointments' },
      publicUrl: 'http://practice.example',
      linkSecret: 'a-secret-of-the-tests-long-enough-for-it',
    };
    const payload = { organisationId: practice.organisationId, reminderId: reminder.id };
    const early = new Date(reminder.dueAt.getTime() - 1);
    await deliverReminder(db, post, payload, early);
    expect(sent).toEqual([]);
    await Promise.all([1, 2, 3, 4, 5].map(() => deliverReminder(db, post, payload, reminder.dueAt)));
    await deliverReminder(db, post, payload, reminder.dueAt);
    expect(sent).toEqual([reminder.messageId]);
  });

  it('plans one reminder per visit and lead time, however often it is asked to', async () => {
    const appointmentId = await inPractice(async (tx) => {
      const booked = await aBookedPatient(tx, practice, { startsAt: at('09:00', 10) });
      for (let repeat = 0; repeat < 3; repeat++) await scheduleReminders(tx, [booked.appointmentId], NOW);
      return booked.appointmentId;
    });
    const sql = 'SELECT count(*)::integer AS count FROM reminder WHERE appointment_id = $1';
    expect(await readOne(db, practice, sql, [appointmentId])).toEqual({ count: 1 });
  });
});
