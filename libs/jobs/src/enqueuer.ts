import { randomUUID } from 'node:crypto';
import type { Queue } from 'bullmq';
import { DomainError } from '@archwright/kernel';
import { JOBS } from './jobs.js';
import type { JobDefinition } from './define-job.js';

const FIRST_RETRY_AFTER_MS = 1_000;
const KEEP_FINISHED_SECONDS = 3_600;
const KEEP_FAILED_SECONDS = 7 * 24 * 3_600;

/** An outbox row names a job that this version does not know. */
export class JobUnknownError extends DomainError {
  constructor(name: string) {
    super('jobs.unknown', `There is no job "${name}"; the jobs are ${JOBS.map((job) => job.name).join(', ')}.`, {
      name,
    });
  }
}

/** How a job came about and when it may run. */
export interface Circumstances {
  /** How long the job waits before it may run. */
  readonly delayMs?: number;
  /** The request that caused it; null when there was none. Travels beside the payload, and the job's work is part of it. */
  readonly requestId?: string | null;
}

/** Adds jobs to their queues. Only the outbox relay may use it: what is added elsewhere can be lost or come too early. */
export class Enqueuer {
  constructor(private readonly queueNamed: (name: string) => Queue) {}

  /** @throws {JobUnknownError} when no job has this name */
  async enqueue(name: string, payload: unknown, circumstances: Circumstances = {}): Promise<void> {
    const definition = JOBS.find((job) => job.name === name);
    if (!definition) throw new JobUnknownError(name);
    await addJob(this.queueNamed(definition.queue), definition as JobDefinition<unknown>, payload, circumstances);
  }
}

/** Adds one job, unless one with the same key still waits or runs. */
export async function addJob<Payload>(
  queue: Queue,
  definition: JobDefinition<Payload>,
  payload: unknown,
  { delayMs = 0, requestId = null }: Circumstances = {},
): Promise<void> {
  const parsed = definition.payload.parse(payload);
  const data = requestId === null ? parsed : { ...parsed, requestId };
  await queue.add(definition.name, data, {
    // Drawn here: the queue's own counters are sequences that it would make at the first job, and the login may make nothing.
    jobId: randomUUID(),
    // Apart from the job's id: a finished job keeps its id for a while, and would swallow what the sweep wants done again.
    deduplication: { id: definition.key(parsed) },
    attempts: definition.attempts,
    backoff: { type: 'exponential', delay: FIRST_RETRY_AFTER_MS, jitter: 0.5 },
    delay: delayMs,
    removeOnComplete: { age: KEEP_FINISHED_SECONDS, count: 1_000 },
    removeOnFail: { age: KEEP_FAILED_SECONDS },
  });
}
