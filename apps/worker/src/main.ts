import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import { DomainError } from '@archwright/kernel';
import { announceReady, createLogger, endInOrder, FrameworkLogger, parseConfiguration } from '@archwright/platform';
import { WorkerModule } from './worker.module.js';

try {
  const configuration = parseConfiguration(process.env);
  const logger = createLogger('worker', configuration.logLevel);
  const app = await NestFactory.createApplicationContext(WorkerModule.forRoot(configuration, logger), {
    logger: new FrameworkLogger(logger),
    abortOnError: false,
  });
  endInOrder(logger, () => app.close());
  logger.info('working');
  announceReady();
} catch (error) {
  const words =
    error instanceof DomainError
      ? error.message
      : error instanceof Error
        ? (error.stack ?? error.message)
        : String(error);
  process.stderr.write(`The worker did not start. ${words}\n`);
  process.exit(1);
}
