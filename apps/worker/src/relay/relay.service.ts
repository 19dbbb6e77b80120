import { Inject, Injectable, type OnApplicationBootstrap, type OnModuleDestroy } from '@nestjs/common';
import { relayOutbox } from '@archwright/casework';
import { Enqueuer } from '@archwright/jobs';
import { Clock, LOGGER } from '@archwright/platform';
import { listOrganisations } from '@archwright/records';
import type { Logger } from 'pino';
import { DataSource } from 'typeorm';
import { SteadyLoop } from './steady-loop.js';

const EVERY_MS = 500;

/** Moves side effects from the outbox to the queues. Nothing else adds to a queue. */
@Injectable()
export class RelayService implements OnApplicationBootstrap, OnModuleDestroy {
  private readonly loop: SteadyLoop;

  constructor(
    private readonly db: DataSource,
    private readonly enqueuer: Enqueuer,
    private readonly clock: Clock,
    @Inject(LOGGER) private readonly logger: Logger,
  ) {
    this.loop = new SteadyLoop('relay', EVERY_MS, logger);
  }

  onApplicationBootstrap(): void {
    this.loop.start(() => this.relayAll());
  }

  onModuleDestroy(): Promise<void> {
    return this.loop.stop();
  }

  private async relayAll(): Promise<void> {
    for (const organisationId of await listOrganisations(this.db)) {
      let isFull = true;
      while (isFull && !this.loop.isStopping) {
        const relayed = await relayOutbox(this.db, this.enqueuer, organisationId, this.clock.now());
        isFull = relayed.isFull;
        if (relayed.postponed > 0) {
          this.logger.warn(
            { organisationId, postponed: relayed.postponed },
            'outbox rows that this version does not know',
          );
        }
      }
    }
  }
}
