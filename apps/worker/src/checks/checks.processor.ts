import { Processor } from '@nestjs/bullmq';
import { checkStage } from '@archwright/casework';
import { JobProcessor, WORKER_OPTIONS, checkStage as job, handle } from '@archwright/jobs';
import { Clock } from '@archwright/platform';
import { inOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';

@Processor(job.queue, WORKER_OPTIONS)
export class ChecksProcessor extends JobProcessor {
  protected readonly handlers = [
    handle(job, (payload) =>
      inOrganisation(this.db, payload.organisationId, (tx) => checkStage(tx, payload, this.clock.now())),
    ),
  ];

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {
    super();
  }
}
