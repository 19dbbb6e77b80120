import { Module, type DynamicModule } from '@nestjs/common';
import { JobsModule } from '@archwright/jobs';
import { DatabaseModule, PlatformModule, type Configuration } from '@archwright/platform';
import type { Logger } from 'pino';
import { DataSource } from 'typeorm';

/** Everything that happens without a person waiting for it. */
@Module({})
export class WorkerModule {
  static forRoot(configuration: Configuration, logger: Logger): DynamicModule {
    const source = new DataSource({ type: 'postgres', url: configuration.databaseUrl });
    return {
      module: WorkerModule,
      imports: [
        PlatformModule.forRoot(configuration, logger),
        DatabaseModule.forRoot(source),
        JobsModule.forRoot(configuration),
      ],
    };
  }
}
