import { randomUUID } from 'node:crypto';
import { Queue, UnrecoverableError, Worker, type Job } from 'bullmq';
import { z } from 'zod';
import { addJob, chooseBackend, defineJob, handle, type JobDefinition } from '@archwright/jobs';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';
import { queueUrl } from '../support/queue.js';
import { until } from '../support/until.js';

const payload = z.strictObject({ number: z.int() });
type Payload = z.output<typeof payload>;

/** Runs on the backend of this test run: PostgreSQL, and a second time Redis. */
describe('a queue', () => {
  let database: SuiteDatabase;
  let definition: JobDefinition<Payload>;
  let queue: Queue;
  let workers: Worker[];
  let backend: ReturnType<typeof chooseBackend>;

  beforeAll(async () => {
    database = await createSuiteDatabase();
    backend = chooseBackend({ databaseUrl: database.url, queueUrl: queueUrl() });
  });
  afterAll(() => database.drop());

  beforeEach(() => {
    const name = `suite-${randomUUID()}`;
    definition = defineJob({
      queue: name,
      name: 'count',
      payload,
      key: ({ number }) => `count_${String(number)}`,
      attempts: 3,
    });
    queue = new Queue(name, backend);
    workers = [];
  });
  afterEach(async () => {
    await Promise.all(workers.map((worker) => worker.close()));
    await queue.close();
  });

  function startWorker(work: (payload: Payload, job: Job) => Promise<void>): Worker {
    const worker = new Worker(queue.name, (job) => handle(definition, (value) => work(value, job)).run(job.data), {
      ...backend,
      concurrency: 4,
    });
    workers.push(worker);
    return worker;
  }

  it('runs what was added, with its payload', async () => {
    const seen: number[] = [];
    startWorker((value) => Promise.resolve(void seen.push(value.number)));
    await addJob(queue, definition, { number: 7 });
    await until(() => seen.length === 1);
    expect(seen).toEqual([7]);
  });

  it('keeps a delayed job until its time', async () => {
    const ranAfterMs: number[] = [];
    const addedAtMs = performance.now();
    startWorker(() => Promise.resolve(void ranAfterMs.push(performance.now() - addedAtMs)));
    await addJob(queue, definition, { number: 1 }, { delayMs: 1_000 });
    await until(() => ranAfterMs.length === 1);
    expect(ranAfterMs[0]).toBeGreaterThanOrEqual(990);
  });

  it('tries a failing job again, and no oftener than its attempts', async () => {
    let tries = 0;
    startWorker(() => {
      tries += 1;
      return Promise.reject(new Error('the mail server is away'));
    });
    await addJob(queue, definition, { number: 1 });
    await until(async () => (await queue.getFailedCount()) === 1);
    expect(tries).toBe(3);
  });

  it('does not try again what can not pass', async () => {
    let tries = 0;
    startWorker(() => {
      tries += 1;
      return Promise.reject(new UnrecoverableError('gone for good'));
    });
    await addJob(queue, definition, { number: 1 });
    await until(async () => (await queue.getFailedCount()) === 1);
    expect(tries).toBe(1);
  });

  it('fails a payload of another shape at once, and never shows it to the work', async () => {
    let tries = 0;
    startWorker(() => Promise.resolve(void (tries += 1)));
    await queue.add('count', { number: 'seven' }, { jobId: randomUUID(), attempts: 3 });
    await until(async () => (await queue.getFailedCount()) === 1);
    const [failed] = await queue.getFailed();
    expect(failed?.attemptsMade).toBe(1);
    expect(tries).toBe(0);
  });

  it('adds one job per key while it waits, and another once it is done', async () => {
    for (let repeat = 0; repeat < 5; repeat++) await addJob(queue, definition, { number: 1 });
    await addJob(queue, definition, { number: 2 });
    expect(await queue.getWaitingCount()).toBe(2);
    let runs = 0;
    startWorker(() => Promise.resolve(void (runs += 1)));
    await until(async () => runs === 2 && (await queue.getCompletedCount()) === 2);
    await addJob(queue, definition, { number: 1 });
    await until(() => runs === 3);
  });

  it('adds a job again after it failed for good', async () => {
    let tries = 0;
    startWorker(() => {
      tries += 1;
      return Promise.reject(new UnrecoverableError('gone for good'));
    });
    await addJob(queue, definition, { number: 1 });
    await until(async () => (await queue.getFailedCount()) === 1);
    await addJob(queue, definition, { number: 1 });
    await until(() => tries === 2);
  });

  it('shares the jobs of one queue between two workers, each job to one of them', async () => {
    const byWorker: [number[], number[]] = [[], []];
    for (const mine of byWorker) {
      startWorker(async ({ number }) => {
        mine.push(number);
        await new Promise((resolve) => setTimeout(resolve, 30));
      });
    }
    await Promise.all(workers.map((worker) => worker.waitUntilReady()));
    const numbers = Array.from({ length: 40 }, (_, number) => number);
    for (const number of numbers) await addJob(queue, definition, { number });
    await until(() => byWorker[0].length + byWorker[1].length >= 40);
    expect([...byWorker[0], ...byWorker[1]].sort((a, b) => a - b)).toEqual(numbers);
    expect(Math.min(byWorker[0].length, byWorker[1].length)).toBeGreaterThan(0);
  });

  it('runs a job once more when its worker vanished in the middle', async () => {
    const impatient = { ...backend, lockDuration: 1_000, stalledInterval: 500, maxStalledCount: 20 };
    const lost = new Worker(queue.name, () => new Promise<void>(() => undefined), {
      ...impatient,
      skipLockRenewal: true,
    });
    await addJob(queue, definition, { number: 1 });
    await until(async () => (await queue.getActiveCount()) === 1);
    await lost.close(true);
    let runs = 0;
    workers.push(new Worker(queue.name, () => Promise.resolve(void (runs += 1)), impatient));
    await until(() => runs === 1);
    expect(runs).toBe(1);
  });
});
