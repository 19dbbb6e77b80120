import { Module, type DynamicModule } from '@nestjs/common';
import { DatabaseModule, PlatformModule, type Configuration } from '@archwright/platform';
import type { Logger } from 'pino';
import { DataSource } from 'typeorm';
import { HealthModule } from './health/health.module.js';

/** Everything that answers over HTTP. */
@Module({})
export class AppModule {
  static forRoot(configuration: Configuration, logger: Logger): DynamicModule {
    const source = new DataSource({ type: 'postgres', url: configuration.databaseUrl });
    return {
      module: AppModule,
      imports: [PlatformModule.forRoot(configuration, logger), DatabaseModule.forRoot(source), HealthModule],
    };
  }
}
