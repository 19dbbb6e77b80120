import { Processor } from '@nestjs/bullmq';
import { proposeReplan } from '@archwright/casework';
import { JobProcessor, WORKER_OPTIONS, handle, replanCase as job } from '@archwright/jobs';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';

/** A search takes seconds of one core: side by side they would only slow each other down and hold up the small jobs. */
@Processor(job.queue, { ...WORKER_OPTIONS, concurrency: 1 })
export class PlanningProcessor extends JobProcessor {
  protected readonly handlers = [handle(job, (payload) => proposeReplan(this.db, payload, this.clock.now()))];

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {
    super();
  }
}
