import { Module, type DynamicModule } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { DatabaseModule, PlatformModule, type Configuration } from '@archwright/platform';
import { createDataSource } from '@archwright/records';
import type { Logger } from 'pino';
import { HealthModule } from './health/health.module.js';
import { SessionGuard } from './security/session.guard.js';
import { SessionsModule } from './sessions/sessions.module.js';

/** Everything that answers over HTTP. Every route wants a session unless it says otherwise. */
@Module({})
export class AppModule {
  static forRoot(configuration: Configuration, logger: Logger): DynamicModule {
    const source = createDataSource({
      url: configuration.databaseUrl,
      applicationName: 'archwright-api',
      connections: configuration.databaseConnections,
    });
    return {
      module: AppModule,
      imports: [
        PlatformModule.forRoot(configuration, logger),
        DatabaseModule.forRoot(source),
        HealthModule,
        SessionsModule,
      ],
      providers: [{ provide: APP_GUARD, useClass: SessionGuard }],
    };
  }
}
