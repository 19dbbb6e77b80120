/** A stop was asked for while something was still starting. */
export class StoppedError extends Error {}

/** What has been started, to be stopped in reverse order, once. */
export class UndoList {
  private readonly steps: (() => Promise<void>)[] = [];
  private undoing: Promise<void> | undefined;

  /** Parts end one after the other from now on, as they should. */
  get hasBegun(): boolean {
    return this.undoing !== undefined;
  }

  /** @throws {StoppedError} when a stop was asked for meanwhile; the step is undone before */
  async add(step: () => Promise<void>): Promise<void> {
    this.steps.push(step);
    if (this.undoing === undefined) return;
    await this.undoing;
    await this.runSteps();
    throw new StoppedError();
  }

  undo(): Promise<void> {
    return (this.undoing ??= this.runSteps());
  }

  private async runSteps(): Promise<void> {
    for (let step = this.steps.pop(); step !== undefined; step = this.steps.pop()) await step();
  }
}
