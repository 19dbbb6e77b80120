import { Processor } from '@nestjs/bullmq';
import { deliverNotice } from '@archwright/casework';
import { JobProcessor, deliverNotice as job, handle } from '@archwright/jobs';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';
import { MAIL_WORKER_OPTIONS } from './mail-worker-options.js';
import { PostService } from './post.service.js';

@Processor(job.queue, MAIL_WORKER_OPTIONS)
export class NoticesProcessor extends JobProcessor {
  protected readonly handlers = [
    handle(job, (payload) => deliverNotice(this.db, this.post, payload, this.clock.now())),
  ];

  constructor(
    private readonly db: DataSource,
    private readonly post: PostService,
    private readonly clock: Clock,
  ) {
    super();
  }
}
