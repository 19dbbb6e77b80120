import { Module, type DynamicModule } from '@nestjs/common';
import { JobsModule } from '@archwright/jobs';
import { DatabaseModule, PlatformModule, type Configuration } from '@archwright/platform';
import { createDataSource } from '@archwright/records';
import type { Logger } from 'pino';
import { ChecksModule } from './checks/checks.module.js';
import { NoticesModule } from './notices/notices.module.js';
import { PlanningModule } from './planning/planning.module.js';
import { RelayModule } from './relay/relay.module.js';
import { ScreeningModule } from './screening/screening.module.js';
import { SweepsModule } from './sweeps/sweeps.module.js';
import { WorkloadModule } from './workload/workload.module.js';

/** Everything that happens without a person waiting for it. */
@Module({})
export class WorkerModule {
  static forRoot(configuration: Configuration, logger: Logger): DynamicModule {
    const source = createDataSource({
      url: configuration.databaseUrl,
      applicationName: 'archwright-worker',
      connections: configuration.databaseConnections,
    });
    return {
      module: WorkerModule,
      imports: [
        PlatformModule.forRoot(configuration, logger),
        DatabaseModule.forRoot(source),
        JobsModule.forRoot(configuration),
        RelayModule,
        NoticesModule,
        ChecksModule,
        PlanningModule,
        ScreeningModule,
        SweepsModule,
        WorkloadModule,
      ],
    };
  }
}
