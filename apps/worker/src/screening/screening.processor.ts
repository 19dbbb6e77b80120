import { Processor } from '@nestjs/bullmq';
import { screenCapture, screenNight } from '@archwright/casework';
import {
  JobProcessor,
  WORKER_OPTIONS,
  handle,
  screenCapture as captureJob,
  screenSeries as seriesJob,
} from '@archwright/jobs';
import { Clock } from '@archwright/platform';
import { inOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';

/** One at a time: nobody waits for it, and a check that somebody waits for has a queue of its own. */
@Processor(captureJob.queue, { ...WORKER_OPTIONS, concurrency: 1 })
export class ScreeningProcessor extends JobProcessor {
  protected readonly handlers = [
    handle(captureJob, (payload) =>
      inOrganisation(this.db, payload.organisationId, (tx) => screenCapture(tx, payload, this.clock.now())),
    ),
    handle(seriesJob, (payload) =>
      inOrganisation(this.db, payload.organisationId, (tx) => screenNight(tx, payload, this.clock.now())),
    ),
  ];

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {
    super();
  }
}
