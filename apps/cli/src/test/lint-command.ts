import { lint } from './lint.js';
import { Tally } from './tally.js';

/** The checks of the code alone, as the whole test run does them first. */
export async function lintCommand(): Promise<number> {
  const tally = new Tally(false);
  await lint(tally);
  process.stdout.write(`${tally.report()}\n`);
  return tally.failed === 0 ? 0 : 1;
}
