import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SharedClock } from '@archwright/platform';
import { queueUrl } from '../support/queue.js';

const READY_WITHIN_MS = 60_000;

/** The background service as it is deployed, in a process of its own, on a clock that the test moves. */
export class WorkerRun {
  readonly clock: SharedClock;
  private readonly folder = mkdtempSync(join(tmpdir(), 'archwright-worker-'));
  private readonly clockFile: string;
  private child: ChildProcess | undefined;

  /** @param clockFile of a service that the worker runs beside; left out: a clock of its own */
  constructor(
    private readonly databaseUrl: string,
    private readonly smtpUrl: string,
    startsAt: Date,
    clockFile?: string,
  ) {
    this.clockFile = clockFile ?? join(this.folder, 'clock');
    this.clock = new SharedClock(this.clockFile, startsAt.toISOString());
  }

  async start(): Promise<void> {
    const queue = queueUrl();
    const child = spawn(process.execPath, ['dist/apps/worker/main.js'], {
      stdio: ['ignore', 2, 2, 'ipc'],
      env: {
        ...process.env,
        NODE_OPTIONS: '',
        LOG_LEVEL: 'error',
        DATABASE_URL: this.databaseUrl,
        ...(queue === null ? {} : { QUEUE_URL: queue }),
        SESSION_SECRET: 'a secret of the tests that is long enough',
        SMTP_URL: this.smtpUrl,
        MAIL_FROM: 'Appointments <appointments@practice.example>',
        PUBLIC_URL: 'http://practice.example',
        ARCHWRIGHT_CLOCK_FILE: this.clockFile,
      },
    });
    this.child = child;
    await new Promise<void>((resolve, reject) => {
      const giveUp = setTimeout(() => {
        reject(new Error('The worker was not ready in time.'));
      }, READY_WITHIN_MS);
      child.once('message', () => {
        clearTimeout(giveUp);
        resolve();
      });
      child.once('exit', (code) => {
        clearTimeout(giveUp);
        reject(new Error(`The worker ended with code ${String(code)}.`));
      });
    });
  }

  /** @param signal SIGKILL leaves it no time for anything */
  async stop(signal: 'SIGTERM' | 'SIGKILL' = 'SIGTERM'): Promise<void> {
    const { child } = this;
    if (child === undefined || child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill(signal);
    await ended;
  }

  async remove(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
