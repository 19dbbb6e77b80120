import { setTimeout as pause } from 'node:timers/promises';
import type { Logger } from 'pino';

/** Does the same round again and again until it is stopped; a round that fails is told and tried again after the pause. */
export class SteadyLoop {
  private readonly stopping = new AbortController();
  private running: Promise<void> = Promise.resolve();

  constructor(
    private readonly name: string,
    private readonly everyMs: number,
    private readonly logger: Logger,
  ) {}

  start(round: () => Promise<void>): void {
    this.running = this.run(round);
  }

  /** Resolves once the round under way is over. */
  async stop(): Promise<void> {
    this.stopping.abort();
    await this.running;
  }

  get isStopping(): boolean {
    return this.stopping.signal.aborted;
  }

  private async run(round: () => Promise<void>): Promise<void> {
    while (!this.isStopping) {
      try {
        await round();
      } catch (error) {
        this.logger.error({ err: error, loop: this.name }, 'a round failed, the next one follows');
      }
      // Ends at once on a stop; that is no failure.
      await pause(this.everyMs, undefined, { signal: this.stopping.signal }).catch(() => undefined);
    }
  }
}
