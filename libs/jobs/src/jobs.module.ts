import { BullModule, getQueueToken } from '@nestjs/bullmq';
import { Inject, Module, type DynamicModule, type OnModuleInit } from '@nestjs/common';
import { ModuleRef } from '@nestjs/core';
import { LOGGER } from '@archwright/platform';
import type { Queue } from 'bullmq';
import type { Logger } from 'pino';
import { chooseBackend, type QueueLocation } from './backend.js';
import { Enqueuer } from './enqueuer.js';
import { QUEUES } from './jobs.js';

/** The queues of a process and the one way into them. */
@Module({})
export class JobsModule implements OnModuleInit {
  constructor(
    private readonly modules: ModuleRef,
    @Inject(LOGGER) private readonly logger: Logger,
  ) {}

  static forRoot(location: QueueLocation): DynamicModule {
    const { connection, prefix } = chooseBackend(location);
    return {
      module: JobsModule,
      global: true,
      imports: [
        BullModule.forRoot({ connection, ...(prefix === undefined ? {} : { prefix }) }),
        BullModule.registerQueue(...QUEUES.map((name) => ({ name }))),
      ],
      providers: [
        {
          provide: Enqueuer,
          inject: [ModuleRef],
          useFactory: (modules: ModuleRef) => new Enqueuer((name) => queueNamed(modules, name)),
        },
      ],
      exports: [BullModule, Enqueuer],
    };
  }

  /** A lost connection is reported here and made again by the queue itself; unheard, it would be printed whole. */
  onModuleInit(): void {
    for (const name of QUEUES) {
      queueNamed(this.modules, name).on('error', (error) => {
        this.logger.warn({ queue: name, reason: error.message }, 'queue trouble');
      });
    }
  }
}

function queueNamed(modules: ModuleRef, name: string): Queue {
  return modules.get<Queue>(getQueueToken(name), { strict: false });
}
