import { Module, type DynamicModule } from '@nestjs/common';
import type { Logger } from 'pino';
import { Clock, SharedClock, SystemClock } from './clock.js';
import type { Configuration } from './configuration.js';

/** Injection tokens of values that have no class. */
export const CONFIGURATION = Symbol('configuration');
export const LOGGER = Symbol('logger');

/** Configuration, logger and clock, for every other module of a process. */
@Module({})
export class PlatformModule {
  static forRoot(configuration: Configuration, logger: Logger): DynamicModule {
    return {
      module: PlatformModule,
      global: true,
      providers: [
        { provide: CONFIGURATION, useValue: configuration },
        { provide: LOGGER, useValue: logger },
        { provide: Clock, useValue: clockOf(configuration) },
      ],
      exports: [CONFIGURATION, LOGGER, Clock],
    };
  }
}

function clockOf({ clockFile, clockStartsAt }: Configuration): Clock {
  return clockFile === null ? new SystemClock(clockStartsAt) : new SharedClock(clockFile, clockStartsAt);
}
