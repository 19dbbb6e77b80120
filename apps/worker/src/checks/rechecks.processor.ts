import { Processor } from '@nestjs/bullmq';
import { recheckStages } from '@archwright/casework';
import { JobProcessor, WORKER_OPTIONS, handle, recheckStages as job } from '@archwright/jobs';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';

/** One at a time, in a queue of its own: nobody waits for it, and checks that somebody waits for are not held up. */
@Processor(job.queue, { ...WORKER_OPTIONS, concurrency: 1 })
export class RechecksProcessor extends JobProcessor {
  protected readonly handlers = [handle(job, (payload) => recheckStages(this.db, payload, this.clock.now()))];

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {
    super();
  }
}
