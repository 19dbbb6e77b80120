import { setTimeout as pause } from 'node:timers/promises';
import { jest } from '@jest/globals';
import { seededRandom } from '@archwright/kernel';
import { queueUrl } from '../support/queue.js';
import { until } from '../support/until.js';
import { openRemindingPractice, type RemindingPractice } from './reminding-practice.js';
import { runSize, seed, tell } from './run-size.js';

const KILLS = runSize('ARCHWRIGHT_KILLS', 20);
const VISITS_PER_KILL = 4;
/** Far enough apart that every start of the worker finds something new to do. */
const BETWEEN_BATCHES_MS = 20_000;
const LONGEST_LIFE_MS = 900;
const LONGEST_THINKING_MS = 250;
const FIRST_DUE_AT = Date.parse('2027-01-05T09:00:00Z');

jest.setTimeout(180_000 + KILLS * 10_000);

let practice: RemindingPractice;
beforeAll(async () => {
  practice = await openRemindingPractice();
});
afterAll(() => practice.close());

interface Intent {
  readonly messageId: string;
  readonly state: string;
  readonly mail: string;
}

/** Every message that the practice owes its patients. */
const intents = (): Promise<Intent[]> =>
  practice.rows((tx) =>
    tx.query(
      `SELECT r.message_id AS "messageId", r.state, i.mail FROM reminder r
         JOIN appointment a ON a.id = r.appointment_id JOIN patient_identity i ON i.patient_id = a.patient_id
       UNION ALL
       SELECT n.message_id, n.state, i.mail FROM notice n JOIN patient_identity i ON i.patient_id = n.patient_id`,
    ),
  );

/** Mails that arrived during the worker's last life and of which it left no record: for each of them, a copy is to come. */
async function unrecorded(before: number): Promise<number> {
  await until(() => practice.office.isQuiet);
  const kept = new Set(practice.office.kept.slice(before).map(({ messageId }) => messageId));
  return (await intents()).filter(({ state, messageId }) => state === 'scheduled' && kept.has(messageId)).length;
}

async function killOften(): Promise<number> {
  const random = seededRandom(seed);
  practice.office.thinkingMs = () => random.nextBelow(LONGEST_THINKING_MS);
  let inWindow = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    const dueAt = new Date(FIRST_DUE_AT + kill * BETWEEN_BATCHES_MS);
    for (let visit = 0; visit < VISITS_PER_KILL; visit++) await practice.book(dueAt);
    practice.clock.moveTo(new Date(Math.max(dueAt.getTime() + 1, practice.clock.nowMs())));
    const before = practice.office.kept.length;
    await practice.worker.start();
    await pause(random.nextBelow(LONGEST_LIFE_MS));
    await practice.worker.stop('SIGKILL');
    inWindow += await unrecorded(before);
  }
  return inWindow;
}

describe(`a worker that is killed again and again, with the queue in ${queueUrl() === null ? 'the database' : 'Redis'}`, () => {
  it('loses no message, invents none, and sends no more copies than kills cut off an answer', async () => {
    const cutOff = await killOften();
    await practice.worker.start();
    await until(async () => (await intents()).every(({ state }) => state === 'sent'), 150_000);
    await practice.worker.stop();

    const owed = await intents();
    const { kept } = practice.office;
    const lost = owed.filter(
      ({ messageId, mail }) => !kept.some((one) => one.messageId === messageId && one.to === mail),
    );
    const copies = kept.length - new Set(kept.map(({ messageId }) => messageId)).size;
    tell('reminders', { kills: KILLS, messages: owed.length, lost: lost.length, 'answers cut off': cutOff, copies });
    expect(lost).toEqual([]);
    expect(owed).toHaveLength(2 * VISITS_PER_KILL * KILLS);
    expect(new Set(owed.map(({ messageId }) => messageId)).size).toBe(owed.length);
    const known = new Map(owed.map(({ messageId, mail }) => [messageId, mail]));
    expect(kept.filter(({ messageId, to }) => known.get(messageId) !== to)).toEqual([]);
    expect(copies).toBeLessThanOrEqual(cutOff);
  });
});
