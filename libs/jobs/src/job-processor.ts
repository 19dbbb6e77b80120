import { OnWorkerEvent, WorkerHost } from '@nestjs/bullmq';
import { Inject } from '@nestjs/common';
import { LOGGER, withinRequest } from '@archwright/platform';
import { UnrecoverableError, type Job, type WorkerOptions } from 'bullmq';
import type { Logger } from 'pino';
import type { JobDefinition } from './define-job.js';

/** How every worker runs: a job survives several deaths of its process before it counts as failed. */
export const WORKER_OPTIONS = { concurrency: 4, maxStalledCount: 20 } satisfies Partial<WorkerOptions>;

/** A job and the work that it stands for. */
export interface JobHandler {
  readonly name: string;
  run(data: unknown): Promise<void>;
}

/** Joins a job with its work; the payload is checked before the work sees it. */
export function handle<Payload>(
  definition: JobDefinition<Payload>,
  work: (payload: Payload) => Promise<void>,
): JobHandler {
  return {
    name: definition.name,
    async run(data) {
      const parsed = definition.payload.safeParse(data);
      if (!parsed.success) {
        throw new UnrecoverableError(
          `The payload of "${definition.name}" does not have its shape: ${parsed.error.message}`,
        );
      }
      await work(parsed.data);
    },
  };
}

/** One queue's worker. A plain error is tried again; `UnrecoverableError` is for what can't pass. */
export abstract class JobProcessor extends WorkerHost {
  @Inject(LOGGER) private readonly reports!: Logger;
  protected abstract readonly handlers: readonly JobHandler[];

  async process(job: Job): Promise<void> {
    const handler = this.handlers.find(({ name }) => name === job.name);
    if (!handler) throw new UnrecoverableError(`This worker does not know the job "${job.name}".`);
    const { requestId, ...payload } = job.data as Record<string, unknown>;
    if (typeof requestId === 'string') await withinRequest(requestId, () => handler.run(payload));
    else await handler.run(payload);
  }

  /** The last try of a job; earlier ones are the queue's daily bread. */
  @OnWorkerEvent('failed')
  reportFailure(job: Job | undefined, error: Error): void {
    if (job === undefined || job.attemptsMade < (job.opts.attempts ?? 1)) return;
    this.reports.error({ job: job.name, jobId: job.id, attempts: job.attemptsMade, err: error }, 'job failed for good');
  }

  @OnWorkerEvent('error')
  reportTrouble(error: Error): void {
    this.reports.warn({ reason: error.message }, 'worker trouble');
  }
}
