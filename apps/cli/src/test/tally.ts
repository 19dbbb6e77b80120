/** What a whole test run amounts to. */
export class Tally {
  passed = 0;
  failed = 0;
  private readonly skips: string[] = [];

  constructor(private readonly mustRunAll: boolean) {}

  add(passed: number, failed: number): void {
    this.passed += passed;
    this.failed += failed;
  }

  /** @param remedy how to get it run */
  skip(what: string, remedy: string): void {
    this.skips.push(`${what}. ${remedy}`);
    if (this.mustRunAll) this.failed += 1;
  }

  /** The skipped things in plain sight, then one line with the sums. */
  report(): string {
    const skipped = this.skips.map((skip) => `SKIPPED${this.mustRunAll ? ' (counts as failed)' : ''}: ${skip}`);
    return [...skipped, `${String(this.passed)} passed, ${String(this.failed)} failed`].join('\n');
  }
}
