import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startEmbeddedPostgres } from '../embedded-postgres/embedded-postgres.js';
import { freePort } from '../embedded-postgres/free-port.js';
import { inDatabase, provision } from '../provision.js';
import { findOrInstall } from './find-program.js';

/** Something to be stopped after the tests, and what the suites must know of it. */
export interface TestServer {
  readonly env: Readonly<Record<string, string>>;
  stop(): Promise<void>;
}

const TEMPLATE = 'archwright_template';

/** A PostgreSQL of its own on a free port, with the migrated template that every suite clones. */
export async function startTestDatabase(): Promise<TestServer> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'archwright-test-'));
  const server = await startEmbeddedPostgres({ dataFolder, isDurable: false });
  const stop = async () => {
    await server.stop();
    rmSync(dataFolder, { recursive: true, force: true });
  };
  try {
    const login = `archwright_service:${server.secrets.appPassword}`;
    const databaseUrl = inDatabase(`postgres://${login}@127.0.0.1:${String(server.port)}`, TEMPLATE);
    await provision({ adminUrl: server.adminUrl, databaseUrl });
    return { env: { TEST_DATABASE_ADMIN_URL: server.adminUrl, TEST_DATABASE_URL: databaseUrl }, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** A Redis of its own on a free port; undefined when there is no such program and none may be installed. */
export async function startTestRedis(): Promise<TestServer | undefined> {
  const program = await findOrInstall(['redis-server', 'valkey-server'], 'redis-server');
  if (program === undefined) return undefined;
  const port = await freePort();
  const folder = mkdtempSync(join(tmpdir(), 'archwright-redis-'));
  const settings = [
    '--bind',
    '127.0.0.1',
    '--save',
    '',
    '--appendonly',
    'no',
    '--maxmemory-policy',
    'noeviction',
    '--dir',
    folder,
  ];
  const server = spawn(program, ['--port', String(port), ...settings], { stdio: 'ignore' });
  await untilListening(server, port);
  return {
    env: { TEST_QUEUE_URL: `redis://127.0.0.1:${String(port)}` },
    stop: async () => {
      await ending(server);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function ending(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null || server.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    server.once('exit', () => {
      resolve();
    });
    server.kill('SIGTERM');
  });
}

async function untilListening(server: ChildProcess, port: number): Promise<void> {
  for (let tries = 0; tries < 100 && server.exitCode === null; tries++) {
    const isOpen = await new Promise<boolean>((resolve) => {
      const socket = connect(port, '127.0.0.1');
      socket.once('connect', () => {
        socket.destroy();
        resolve(true);
      });
      socket.once('error', () => {
        resolve(false);
      });
    });
    if (isOpen) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  await ending(server);
  throw new Error(`The Redis server did not open port ${String(port)}.`);
}
