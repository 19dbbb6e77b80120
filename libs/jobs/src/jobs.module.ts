import { BullModule, getQueueToken } from '@nestjs/bullmq';
import { Module, type DynamicModule } from '@nestjs/common';
import { ModuleRef } from '@nestjs/core';
import type { Queue } from 'bullmq';
import { chooseBackend, type QueueLocation } from './backend.js';
import { Enqueuer } from './enqueuer.js';
import { QUEUES } from './jobs.js';

/** The queues of a process and the one way into them. */
@Module({})
export class JobsModule {
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
          useFactory: (modules: ModuleRef) =>
            new Enqueuer((name) => modules.get<Queue>(getQueueToken(name), { strict: false })),
        },
      ],
      exports: [BullModule, Enqueuer],
    };
  }
}
