import { jest } from '@jest/globals';
import { migrateQueueSchema } from '@archwright/jobs';
import { Redis } from 'ioredis';
import pg from 'pg';
import { APPLICATION_ROLE } from '../../migrations/row-security.js';
import { queueUrl } from '../support/queue.js';
import { until } from '../support/until.js';
import { openRemindingPractice, type RemindingPractice } from './reminding-practice.js';

/** What the sweep takes for forgotten, and a little more. */
const GRACE_MS = 65_000;
const VISITS = 5;

jest.setTimeout(120_000);

let practice: RemindingPractice;
beforeAll(async () => {
  practice = await openRemindingPractice();
  await practice.worker.start();
});
afterAll(() => practice.close());

const remindersWhere = async (condition: string): Promise<number> => {
  const [row]: { count: number }[] = await practice.rows((tx) =>
    tx.query(`SELECT count(*)::integer AS count FROM reminder WHERE ${condition}`),
  );
  return row?.count ?? -1;
};

/** The database's own time, which the outbox notes; the practice's clock is another one. */
async function databaseTime(): Promise<Date> {
  const [row]: { now: Date }[] = await practice.rows((tx) => tx.query('SELECT clock_timestamp() AS now'));
  return row?.now ?? new Date(NaN);
}

async function jobsMadeAgain(since: Date): Promise<number> {
  const [row]: { count: number }[] = await practice.rows((tx) =>
    tx.query(`SELECT count(*)::integer AS count FROM outbox WHERE kind = 'deliver-reminder' AND created_at > $1`, [
      since,
    ]),
  );
  return row?.count ?? -1;
}

/** The whole queue is gone at once, under a worker that runs. */
async function loseQueue(): Promise<void> {
  const url = queueUrl();
  if (url !== null) {
    const redis = new Redis(url);
    await redis.flushdb(); // another suite may keep its queue in another database of this Redis
    redis.disconnect();
    return;
  }
  const admin = new pg.Client({ connectionString: practice.adminUrl });
  await admin.connect();
  await admin.query('DROP SCHEMA bullmq CASCADE');
  await migrateQueueSchema(admin, APPLICATION_ROLE);
  await admin.end();
}

describe(`a queue that is lost, in ${queueUrl() === null ? 'the database' : 'Redis'}`, () => {
  it('is made again from our own tables, and everything that was due is sent', async () => {
    const dueAt = practice.inMinutes(2);
    const patients = await Promise.all(Array.from({ length: VISITS }, () => practice.book(dueAt)));
    await until(() => practice.office.kept.length === VISITS); // their itineraries
    const refusals = Array.from({ length: 100 }, () => ({ kind: 'refuse-recipient', code: 451 }) as const);
    for (const { mail } of patients) practice.office.meet(mail, ...refusals);
    practice.clock.moveTo(new Date(dueAt.getTime() + 1));
    await until(async () => (await remindersWhere('attempts > 0')) === VISITS);

    const lostAt = await databaseTime();
    await loseQueue();
    expect(await remindersWhere(`state = 'scheduled'`)).toBe(VISITS);
    for (const { mail } of patients) practice.office.meet(mail);
    practice.clock.moveTo(new Date(practice.clock.nowMs() + GRACE_MS));
    await until(async () => (await remindersWhere(`state = 'sent'`)) === VISITS, 60_000);
    // All but those that the worker had in its hands at that moment, which are four at most.
    expect(await jobsMadeAgain(lostAt)).toBeGreaterThan(0);
    for (const { mail } of patients) expect(practice.office.mailsTo(mail)).toHaveLength(2);
  });
});
