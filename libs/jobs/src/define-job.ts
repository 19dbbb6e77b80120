import type { z } from 'zod';

/** One kind of background work: where it queues, what it carries, how often it is tried. */
export interface JobDefinition<Payload> {
  readonly queue: string;
  readonly name: string;
  readonly payload: z.ZodType<Payload>;
  /** While a job with this key waits or runs, another one is not added. It only saves work: the database decides what happens once. */
  readonly key: (payload: Payload) => string;
  readonly attempts: number;
}

/** Names are kebab-case verb phrases; the queue's own syntax refuses colons. */
export function defineJob<Payload>(definition: JobDefinition<Payload>): JobDefinition<Payload> {
  return definition;
}
