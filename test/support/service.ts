import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { until } from './until.js';

const READY_WITHIN_MS = 180_000;

/** The whole product as a person starts it, on a free port. */
export interface Service {
  readonly url: string;
  readonly process: ChildProcess;
  /** What it has said so far. */
  said(): string;
  /** Sends a signal and waits for the end; answers the exit code. */
  stop(signal?: NodeJS.Signals): Promise<number | null>;
}

/** A folder that is gone after the suite. */
export function temporaryFolder(): { path: string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'archwright-service-'));
  return {
    path,
    remove: () => {
      rmSync(path, { recursive: true, force: true });
    },
  };
}

/** Runs the built command line; standard output ends up in `answered`, and with standard error in `said`. */
export function runCommandLine(args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const child = spawn(process.execPath, ['dist/apps/cli/main.js', ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NODE_OPTIONS: '', ...env },
  });
  let text = '';
  let answer = '';
  child.stdout.setEncoding('utf8').on('data', (more: string) => (answer += more));
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (more: string) => (text += more));
  const ended = new Promise<number | null>((resolve) => {
    child.once('close', (code) => {
      resolve(code);
    });
  });
  return { child, ended, said: () => text, answered: () => answer };
}

/** Starts everything over a data folder and waits until it is ready. */
export async function startService(
  dataFolder: string,
  args: readonly string[] = [],
  env: Readonly<Record<string, string>> = {},
): Promise<Service> {
  const { child, ended, said } = runCommandLine(['start', '--port', '0', '--data', dataFolder, ...args], env);
  const urlIn = () => /ready at (http:\S+)/.exec(said())?.[1];
  await until(() => urlIn() !== undefined || child.exitCode !== null, READY_WITHIN_MS);
  const url = urlIn();
  if (url === undefined) throw new Error(`It did not start:\n${said()}`);
  return {
    url,
    process: child,
    said,
    stop: (signal = 'SIGTERM') => {
      child.kill(signal);
      return ended;
    },
  };
}
