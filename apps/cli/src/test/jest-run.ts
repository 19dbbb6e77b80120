import { mkdtempSync, readFileSync, rmSync, existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { runProgram } from './run-program.js';
import type { Tally } from './tally.js';

const jestResult = z.object({
  numPassedTests: z.int(),
  numFailedTests: z.int(),
  numPendingTests: z.int(),
  numRuntimeErrorTestSuites: z.int(),
});

export interface JestRun {
  /** How the run is announced and named in the sums. */
  readonly title: string;
  readonly project: 'unit' | 'e2e' | 'faults' | 'browser';
  /** Paths or patterns of suites; all of the project when empty. */
  readonly patterns?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs one project of the test configuration; a suite that could not be loaded counts as one failure. */
export async function runJest({ title, project, patterns = [], env = {} }: JestRun, tally: Tally): Promise<void> {
  process.stderr.write(`\n== ${title}\n`);
  const folder = mkdtempSync(join(tmpdir(), 'archwright-jest-'));
  const answer = join(folder, 'result.json');
  const args = [
    '-c',
    '.config/jest.config.mjs',
    '--selectProjects',
    project,
    '--passWithNoTests',
    '--json',
    '--outputFile',
    answer,
    // On two cores one worker would leave both half idle: suites wait for databases, browsers and other processes.
    '--maxWorkers',
    '2',
  ];
  const { code } = await runProgram(
    process.execPath,
    ['--experimental-vm-modules', 'node_modules/jest/bin/jest.js', ...args, ...patterns],
    {
      isShown: true,
      // Worker processes don't inherit the flag, only the variable.
      env: { ...env, NODE_OPTIONS: `${process.env.NODE_OPTIONS ?? ''} --experimental-vm-modules --no-warnings`.trim() },
    },
  );
  if (existsSync(answer)) {
    const result = jestResult.parse(JSON.parse(readFileSync(answer, 'utf8')));
    tally.add(result.numPassedTests, result.numFailedTests + result.numRuntimeErrorTestSuites);
    if (result.numPendingTests > 0)
      tally.skip(`${String(result.numPendingTests)} tests of "${title}"`, 'They are marked as skipped in their files.');
    const isSilentFailure = code !== 0 && result.numFailedTests + result.numRuntimeErrorTestSuites === 0;
    if (isSilentFailure) tally.add(0, 1);
  } else {
    tally.add(0, 1);
    process.stderr.write(`FAILED ${title}: the test runner ended with code ${String(code)} and left no result.\n`);
  }
  rmSync(folder, { recursive: true, force: true });
}
