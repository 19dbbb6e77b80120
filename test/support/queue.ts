/**
 * Where this run keeps its queues: null for the suite's own database, else the Redis that the test command started.
 * A suite that imports this is run a second time on Redis.
 */
export function queueUrl(): string | null {
  return process.env.TEST_QUEUE_URL ?? null;
}
