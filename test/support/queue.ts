/** Databases of a Redis as it comes. */
const REDIS_DATABASES = 16;

/**
 * Where this run keeps its queues: null for the suite's own database, else the Redis that the test command started.
 * A suite that imports this is run a second time on Redis.
 *
 * Suites that run side by side share that Redis, each with a database of its own in it: a worker would else take the
 * jobs of another suite and find nothing to do for them.
 */
export function queueUrl(): string | null {
  const redis = process.env.TEST_QUEUE_URL;
  if (redis === undefined) return null;
  const runner = Number(process.env.JEST_WORKER_ID ?? 1);
  return new URL(`/${String(runner % REDIS_DATABASES)}`, redis).href;
}
