import { WorkloadRun, inOrganisation } from '@archwright/records';
import type { DataSource } from 'typeorm';
import type { WorkloadProgress } from './search-workload.js';

/** Writes down how far a run has come, and calls its search off when somebody has cancelled it. */
export class RunWatch {
  private readonly controller = new AbortController();
  private writing: Promise<void> | null = null;

  constructor(
    private readonly db: DataSource,
    private readonly organisationId: string,
    private readonly runId: string,
  ) {}

  get signal(): AbortSignal {
    return this.controller.signal;
  }

  /**
   * One report at a time: what comes while one is written is soon followed by another, and so is one that could not be
   * written.
   */
  readonly tell = ({ epochs, objective }: WorkloadProgress): void => {
    const isWritten = (): void => {
      this.writing = null;
    };
    this.writing ??= this.write({ epochs, stands: objective }).then(isWritten, isWritten);
  };

  /** @returns false when the run has been cancelled */
  async begin(doing: string): Promise<boolean> {
    await this.settled();
    await this.write({ doing, epochs: 0 });
    return !this.signal.aborted;
  }

  /** Nothing is written any more after this. */
  async settled(): Promise<void> {
    await this.writing;
  }

  private async write(change: Partial<Pick<WorkloadRun, 'doing' | 'epochs'>> & { stands?: object }): Promise<void> {
    const { affected } = await inOrganisation(this.db, this.organisationId, (tx) =>
      tx.update(WorkloadRun, { id: this.runId, state: 'running' }, change),
    );
    if (affected === 0) this.controller.abort();
  }
}
