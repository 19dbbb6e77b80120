import { spawn, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { DomainError } from '@archwright/kernel';

const READY_WITHIN_MS = 60_000;
const STOP_WITHIN_MS = 12_000;

/** The API or the worker ended while it should run. */
export class ServiceEndedError extends DomainError {
  constructor(name: string, how: string) {
    super('start.service-ended', `The ${name} ${how}; its own words are above.`, { name });
  }
}

export interface ServiceProcess {
  /** Settles with how it ended. */
  readonly ended: Promise<string>;
  stop(): Promise<void>;
}

/**
 * Starts the API or the worker and waits until it takes work.
 *
 * It leads a process group of its own, so that Ctrl-C in a terminal reaches only the starting process, which then stops
 * everything in order; it ends by itself when the starting process is gone.
 *
 * @throws {ServiceEndedError} when it ends first or says nothing in time
 */
export async function startService(
  name: 'api' | 'worker',
  env: Readonly<Record<string, string>>,
): Promise<ServiceProcess> {
  const main = fileURLToPath(new URL(`../${name}/main.js`, import.meta.url));
  const child = spawn(process.execPath, ['--enable-source-maps', main], {
    stdio: ['ignore', 2, 2, 'ipc'],
    env: { ...process.env, ...env },
    detached: true,
  });
  const ended = new Promise<string>((resolve) => {
    child.once('exit', (code, signal) => {
      resolve(signal ? `was killed by ${signal}` : `ended with code ${String(code)}`);
    });
  });
  const service = { ended, stop: () => stopChild(child, ended) };
  const ready = new Promise<'ready'>((resolve) =>
    child.once('message', () => {
      resolve('ready');
    }),
  );
  const outcome = await Promise.race([ready, ended, after(READY_WITHIN_MS)]);
  if (outcome === 'ready') return service;
  await service.stop();
  throw new ServiceEndedError(name, outcome);
}

async function stopChild(child: ChildProcess, ended: Promise<string>): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill('SIGTERM');
  const killing = setTimeout(() => child.kill('SIGKILL'), STOP_WITHIN_MS);
  await ended;
  clearTimeout(killing);
}

function after(ms: number): Promise<string> {
  return new Promise((resolve) =>
    setTimeout(() => {
      resolve(`was not ready within ${String(ms / 1000)} s`);
    }, ms).unref(),
  );
}
