import { spawn, type ChildProcess } from 'node:child_process';

const READY_WITHIN_MS = 60_000;

/** The API or the worker as it is deployed, in a process of its own that a test starts, kills and starts again. */
export class ServiceProcess {
  private child: ChildProcess | undefined;

  constructor(
    private readonly name: 'api' | 'worker',
    private readonly env: Readonly<Record<string, string>>,
  ) {}

  /** Resolves once it takes work. */
  async start(): Promise<void> {
    const child = spawn(process.execPath, [`dist/apps/${this.name}/main.js`], {
      stdio: ['ignore', 2, 2, 'ipc'],
      env: { ...process.env, NODE_OPTIONS: '', LOG_LEVEL: 'fatal', ...this.env },
    });
    this.child = child;
    await new Promise<void>((resolve, reject) => {
      const giveUp = setTimeout(() => {
        reject(new Error(`The ${this.name} was not ready in time.`));
      }, READY_WITHIN_MS);
      child.once('message', () => {
        clearTimeout(giveUp);
        resolve();
      });
      child.once('exit', (code, signal) => {
        clearTimeout(giveUp);
        reject(new Error(`The ${this.name} ended before it was ready: ${signal ?? `code ${String(code)}`}.`));
      });
    });
  }

  get isRunning(): boolean {
    return this.child !== undefined && this.child.exitCode === null && this.child.signalCode === null;
  }

  /** @param signal SIGKILL leaves it no time for anything */
  async stop(signal: 'SIGTERM' | 'SIGKILL' = 'SIGTERM'): Promise<void> {
    const { child } = this;
    if (child === undefined || !this.isRunning) return;
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill(signal);
    await ended;
  }
}
