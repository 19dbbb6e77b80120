import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { runProgram } from './run-program.js';
import type { Tally } from './tally.js';

interface Check {
  readonly name: string;
  readonly bin: string;
  readonly args: readonly string[];
}

const CHECKS: readonly Check[] = [
  { name: 'types', bin: 'typescript/bin/tsc', args: ['-p', 'tsconfig.json', '--noEmit'] },
  {
    name: 'rules',
    bin: 'eslint/bin/eslint.js',
    args: [
      '-c',
      '.config/eslint.config.mjs',
      '--cache',
      '--cache-location',
      'node_modules/.cache/eslint/',
      '--max-warnings',
      '0',
      '.',
    ],
  },
  {
    name: 'format',
    bin: 'prettier/bin/prettier.cjs',
    args: ['--config', '.config/prettier.json', '--check', '--log-level', 'warn', '.'],
  },
  { name: 'unused exports', bin: 'knip/bin/knip.js', args: ['--config', '.config/knip.json', '--no-progress'] },
  {
    name: 'cycles',
    bin: 'dependency-cruiser/bin/dependency-cruise.mjs',
    args: ['--config', '.config/dependency-cruiser.mjs', 'apps', 'libs', 'migrations', 'test'],
  },
];
const WEB_TYPES: Check = {
  name: 'types of the web application',
  bin: 'typescript/bin/tsc',
  args: ['-p', 'apps/web/tsconfig.json'],
};

/** Types, rules, format, unused exports and cycles; each counts as one check. Two run at a time. */
export async function lint(tally: Tally): Promise<void> {
  const waiting = [...CHECKS, ...(existsSync('apps/web/src') ? [WEB_TYPES] : [])];
  const worker = async () => {
    for (let check = waiting.shift(); check !== undefined; check = waiting.shift()) await runCheck(check, tally);
  };
  await Promise.all([worker(), worker()]);
}

async function runCheck({ name, bin, args }: Check, tally: Tally): Promise<void> {
  const { code, output } = await runProgram(process.execPath, [join('node_modules', bin), ...args], { isShown: false });
  const isFine = code === 0;
  tally.add(isFine ? 1 : 0, isFine ? 0 : 1);
  process.stderr.write(isFine ? `ok    ${name}\n` : `FAILED ${name}\n${output.trimEnd()}\n`);
}
