import { Inject, Injectable, type OnApplicationBootstrap, type OnModuleDestroy } from '@nestjs/common';
import { sweep } from '@archwright/casework';
import { Clock, LOGGER } from '@archwright/platform';
import { listOrganisations } from '@archwright/records';
import type { Logger } from 'pino';
import { DataSource } from 'typeorm';
import { SteadyLoop } from '../relay/steady-loop.js';

/** Short enough that a patient's freed time is soon on offer again, long enough to cost nothing. Project default. */
const EVERY_MS = 5_000;

/** Looks after what nobody asks for: forgotten work, expired holds, unanswered questions, the audit's seals. */
@Injectable()
export class SweepService implements OnApplicationBootstrap, OnModuleDestroy {
  private readonly loop: SteadyLoop;

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    @Inject(LOGGER) private readonly logger: Logger,
  ) {
    this.loop = new SteadyLoop('sweep', EVERY_MS, logger);
  }

  onApplicationBootstrap(): void {
    this.loop.start(() => this.sweepAll());
  }

  onModuleDestroy(): Promise<void> {
    return this.loop.stop();
  }

  private async sweepAll(): Promise<void> {
    for (const organisationId of await listOrganisations(this.db)) {
      if (this.loop.isStopping) return;
      const swept = await sweep(this.db, organisationId, this.clock.now());
      if (swept.recreated > 0) this.logger.warn({ organisationId, ...swept }, 'work that the queue had forgotten');
    }
  }
}
