import { Processor } from '@nestjs/bullmq';
import { Searches, runWorkload } from '@archwright/casework';
import { JobProcessor, WORKER_OPTIONS, handle, searchWorkload as job } from '@archwright/jobs';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';

/** A queue of its own, one search at a time: a repair that somebody waits for finds a thread between two of its parts. */
@Processor(job.queue, { ...WORKER_OPTIONS, concurrency: 1 })
export class WorkloadProcessor extends JobProcessor {
  protected readonly handlers = [
    handle(job, (payload) => runWorkload({ db: this.db, searches: this.searches }, payload, this.clock)),
  ];

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly searches: Searches,
  ) {
    super();
  }
}
