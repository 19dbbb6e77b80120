import type { Logger } from 'pino';

const CLOSE_WITHIN_MS = 10_000;

/**
 * Ends this process in order: on a stop signal, when the process that started it is gone, or after an error nobody caught.
 *
 * @param close stops taking work, finishes what runs, closes connections
 */
export function endInOrder(logger: Logger, close: () => Promise<void>): void {
  let isEnding = false;
  const end = (why: string, code: number) => {
    if (isEnding) return;
    isEnding = true;
    logger.info({ why }, 'stopping');
    setTimeout(() => process.exit(1), CLOSE_WITHIN_MS).unref();
    close().then(
      () => process.exit(code),
      (error: unknown) => {
        logger.error({ err: error }, 'did not stop cleanly');
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
    process.on(signal, () => {
      end(signal, 0);
    });
  process.once('disconnect', () => {
    end('the starting process is gone', 0);
  });
  for (const event of ['uncaughtException', 'unhandledRejection'] as const) {
    process.on(event, (error: unknown) => {
      logger.fatal({ err: error }, 'unexpected error');
      end(event, 1);
    });
  }
}

/** Tells the process that started this one, if any, that work is being taken. */
export function announceReady(): void {
  process.send?.('ready');
}
