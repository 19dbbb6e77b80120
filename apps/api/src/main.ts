import 'reflect-metadata';
import { DomainError } from '@archwright/kernel';
import { announceReady, createLogger, endInOrder, parseConfiguration } from '@archwright/platform';
import { createApi } from './create-api.js';

try {
  const configuration = parseConfiguration(process.env);
  const logger = createLogger('api', configuration.logLevel);
  const app = await createApi(configuration, logger);
  endInOrder(logger, () => app.close());
  await app.listen(configuration.port, configuration.host);
  logger.info({ port: configuration.port, host: configuration.host }, 'listening');
  announceReady();
} catch (error) {
  process.stderr.write(`The API did not start. ${explained(error)}\n`);
  process.exit(1);
}

function explained(error: unknown): string {
  if (error instanceof DomainError) return error.message;
  if (!(error instanceof Error)) return String(error);
  const isPortTaken = 'code' in error && error.code === 'EADDRINUSE';
  return isPortTaken ? `${error.message}. Choose another port with PORT.` : (error.stack ?? error.message);
}
