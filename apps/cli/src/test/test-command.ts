import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readArguments, UsageError } from '../arguments.js';
import { findChromium } from './find-chromium.js';
import { runJest } from './jest-run.js';
import { lint } from './lint.js';
import { stopPrograms } from './run-program.js';
import { Tally } from './tally.js';
import { startTestDatabase, startTestRedis, type TestServer } from './test-servers.js';

const PARTS = ['lint', 'unit', 'e2e', 'redis', 'faults', 'browser'] as const;
const USAGE = `npm test [-- [--only ${PARTS.join(',')}] [PATTERN ...]]`;
/** West and east of Greenwich, one of them off the whole hour. */
const HOST_ZONES = ['America/New_York', 'Asia/Kolkata'];
/** Pictures that the browser tests take: below what is built, since nobody keeps them. */
const SCREENS = 'dist/screens';
const TITLES = { e2e: 'End to end', faults: 'Faults' } as const;

/** Everything that decides whether a change is good; the last line holds the sums. */
export async function testCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, USAGE, { only: { type: 'string' } });
  const parts = chosenParts(values.only);
  const tally = new Tally(process.env.CI_REQUIRE_ALL === '1');
  const servers: TestServer[] = [];
  const stopServers = async () => {
    for (const server of servers.splice(0)) await server.stop();
  };
  const breakOff = () => {
    stopPrograms();
    void stopServers().then(() => process.exit(130));
  };
  process.once('SIGINT', breakOff).once('SIGTERM', breakOff);

  try {
    if (parts.has('lint')) await lint(tally);
    if (parts.has('unit')) await runUnitTests(positionals, tally);
    if (['e2e', 'redis', 'faults', 'browser'].some((part) => parts.has(part))) {
      const database = await startTestDatabase();
      servers.push(database);
      if (parts.has('e2e')) {
        await runJest(
          { title: 'end to end, queue in PostgreSQL', project: 'e2e', patterns: positionals, env: database.env },
          tally,
        );
      }
      if (parts.has('redis')) await runOnRedis('e2e', positionals, database.env, servers, tally);
      if (parts.has('faults')) {
        await runJest(
          { title: 'faults, queue in PostgreSQL', project: 'faults', patterns: positionals, env: database.env },
          tally,
        );
        await runOnRedis('faults', positionals, database.env, servers, tally);
      }
      if (parts.has('browser')) await runInBrowser(positionals, database.env, tally);
    }
  } finally {
    await stopServers();
  }
  process.stdout.write(`\n${tally.report()}\n`);
  return tally.failed === 0 ? 0 : 1;
}

function chosenParts(only: string | undefined): Set<string> {
  if (only === undefined) return new Set(PARTS);
  const chosen = only.split(',');
  const unknown = chosen.find((part) => !PARTS.some((known) => known === part));
  if (unknown !== undefined)
    throw new UsageError(`"${unknown}" is no part of the tests; the parts are ${PARTS.join(', ')}.`, USAGE);
  return new Set(chosen);
}

async function runUnitTests(patterns: readonly string[], tally: Tally): Promise<void> {
  await runJest({ title: 'units', project: 'unit', patterns }, tally);
  if (patterns.length > 0) return;
  for (const zone of HOST_ZONES) {
    await runJest(
      { title: `calendar on a machine in ${zone}`, project: 'unit', patterns: ['libs/calendar'], env: { TZ: zone } },
      tally,
    );
  }
}

/** The suites that ask for a queue, once more on Redis. */
async function runOnRedis(
  project: 'e2e' | 'faults',
  patterns: readonly string[],
  env: Readonly<Record<string, string>>,
  servers: TestServer[],
  tally: Tally,
): Promise<void> {
  const suites = suitesWithQueue(`test/${project}`, patterns);
  if (suites.length === 0) return;
  const redis = await startTestRedis();
  if (redis === undefined) {
    tally.skip(
      `${TITLES[project]} with the queue in Redis: no redis-server was found`,
      'Install it (Debian: apt-get install redis-server) and run again.',
    );
    return;
  }
  servers.push(redis);
  await runJest(
    {
      title: `${TITLES[project].toLowerCase()}, queue in Redis`,
      project,
      patterns: suites,
      env: { ...env, ...redis.env },
    },
    tally,
  );
}

function suitesWithQueue(folder: string, patterns: readonly string[]): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => patterns.length === 0 || patterns.some((pattern) => new RegExp(pattern).test(path)))
    .filter((path) => path.endsWith('.e2e-spec.ts') && readFileSync(path, 'utf8').includes('/support/queue.js'));
}

async function runInBrowser(
  patterns: readonly string[],
  env: Readonly<Record<string, string>>,
  tally: Tally,
): Promise<void> {
  if (!existsSync('test/browser')) return;
  const chromium = await findChromium();
  if (chromium === undefined) {
    tally.skip(
      'The browser tests: no Chromium was found',
      'Install it (Debian: apt-get install chromium) or name one with CHROMIUM_PATH, and run again.',
    );
    return;
  }
  const more = { TEST_CHROMIUM: chromium, TEST_SCREENS: SCREENS };
  await runJest({ title: 'browser', project: 'browser', patterns, env: { ...env, ...more } }, tally);
  process.stdout.write(`\nPictures of every screen, at three widths, are in ${SCREENS} for looking at.\n`);
}
