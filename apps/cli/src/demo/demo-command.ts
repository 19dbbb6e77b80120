import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { readArguments } from '../arguments.js';
import { freePort } from '../embedded-postgres/free-port.js';
import { RefusedCall } from './api-session.js';
import { StoryBroken } from './cast.js';
import { play } from './play.js';

const USAGE = 'npm run demo [-- --url http://127.0.0.1:3000]';
const READY_WITHIN_MS = 120_000;

/** Plays one case through a running service, or through a temporary one on a free port that is stopped afterwards. */
export async function demoCommand(args: readonly string[]): Promise<number> {
  const { values } = readArguments(args, USAGE, { url: { type: 'string' } });
  return values.url === undefined ? playOnTemporaryService() : tell(values.url);
}

async function tell(url: string): Promise<number> {
  try {
    await play(url.replace(/\/$/, ''), (line) => process.stdout.write(`${line}\n`));
    return 0;
  } catch (error) {
    if (!(error instanceof StoryBroken) && !(error instanceof RefusedCall)) throw error;
    process.stderr.write(`The story broke off: ${error.message}\n`);
    return 1;
  }
}

async function playOnTemporaryService(): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'archwright-demo-'));
  const port = await freePort();
  const service = spawn(
    process.execPath,
    [process.argv[1] ?? '', 'start', '--port', String(port), '--data', join(folder, 'data'), '--no-cases'],
    { stdio: ['ignore', 'ignore', 'inherit'] },
  );
  try {
    const url = `http://127.0.0.1:${String(port)}`;
    await untilReady(service, url);
    return await tell(url);
  } finally {
    await stop(service);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function untilReady(service: ChildProcess, url: string): Promise<void> {
  const giveUpAt = Date.now() + READY_WITHIN_MS;
  while (Date.now() < giveUpAt) {
    if (service.exitCode !== null) break;
    const isReady = await fetch(`${url}/health/ready`).then(
      (answer) => answer.ok,
      () => false,
    );
    if (isReady) return;
    await pause(250);
  }
  throw new StoryBroken(`the service at ${url} to be ready within ${String(READY_WITHIN_MS / 1000)} seconds`);
}

async function stop(service: ChildProcess): Promise<void> {
  if (service.exitCode !== null) return;
  service.kill('SIGTERM');
  await once(service, 'exit');
}
