import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SharedClock } from '@archwright/platform';
import { queueUrl } from '../support/queue.js';
import { ServiceProcess } from '../support/service-process.js';

/** The background service on a clock that the test moves. */
export class WorkerRun {
  readonly clock: SharedClock;
  private readonly folder = mkdtempSync(join(tmpdir(), 'archwright-worker-'));
  private readonly worker: ServiceProcess;

  /** @param clockFile of a service that the worker runs beside; left out: a clock of its own */
  constructor(databaseUrl: string, smtpUrl: string, startsAt: Date, clockFile = join(this.folder, 'clock')) {
    this.clock = new SharedClock(clockFile, startsAt.toISOString());
    const queue = queueUrl();
    this.worker = new ServiceProcess('worker', {
      LOG_LEVEL: 'error',
      DATABASE_URL: databaseUrl,
      ...(queue === null ? {} : { QUEUE_URL: queue }),
      SESSION_SECRET: 'a secret of the tests that is long enough',
      SMTP_URL: smtpUrl,
      MAIL_FROM: 'Appointments <appointments@practice.example>',
      PUBLIC_URL: 'http://practice.example',
      ARCHWRIGHT_CLOCK_FILE: clockFile,
    });
  }

  start(): Promise<void> {
    return this.worker.start();
  }

  /** @param signal SIGKILL leaves it no time for anything */
  stop(signal: 'SIGTERM' | 'SIGKILL' = 'SIGTERM'): Promise<void> {
    return this.worker.stop(signal);
  }

  async remove(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
