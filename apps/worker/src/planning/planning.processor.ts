import { Processor } from '@nestjs/bullmq';
import { Searches, proposeRepairs, proposeReplan } from '@archwright/casework';
import { JobProcessor, WORKER_OPTIONS, handle, repairDisturbance, replanCase as job } from '@archwright/jobs';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';

/** The searches run on threads; one case at a time, so that its searches meet the same thread and what it remembers. */
@Processor(job.queue, { ...WORKER_OPTIONS, concurrency: 1 })
export class PlanningProcessor extends JobProcessor {
  protected readonly handlers = [
    handle(job, (payload) => proposeReplan({ db: this.db, searches: this.searches }, payload, this.clock.now())),
    handle(repairDisturbance, (payload) =>
      proposeRepairs({ db: this.db, searches: this.searches }, payload, this.clock.now()),
    ),
  ];

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly searches: Searches,
  ) {
    super();
  }
}
