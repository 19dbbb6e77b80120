import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { callersPath, readArguments, UsageError } from '../../apps/cli/src/arguments.js';
import { openInstance } from '../../apps/cli/src/solve/open-instance.js';
import { runSearch } from '../../apps/cli/src/solve/run-search.js';
import { table } from './figures.js';

const USAGE = `npm run bench:solve -- --data FOLDER [--seconds S] [--only TEXT]
FOLDER holds folders of instances, named in its best-known.json as families.FOLDER.INSTANCE = { makespan, lowerBound }.`;
const DEFAULT_SECONDS = 10;

/** A makespan of null: proved to have no plan. */
interface BestKnown {
  readonly makespan: number | null;
  readonly lowerBound: number | null;
}

interface Result {
  readonly name: string;
  readonly makespan: number | null;
  readonly bound: number;
  readonly best: BestKnown;
  readonly seconds: number;
}

type Families = Readonly<Record<string, Readonly<Record<string, BestKnown>>>>;

/** Solves every instance of a folder from one seed, checks every plan, and compares with the best known values. */
export function benchSolve(args: readonly string[]): Promise<string> {
  const { values, positionals } = readArguments(args, USAGE, {
    data: { type: 'string' },
    seconds: { type: 'string' },
    only: { type: 'string' },
  });
  const seconds = Number(values.seconds ?? DEFAULT_SECONDS);
  if (values.data === undefined || positionals.length > 0 || !(seconds > 0)) {
    throw new UsageError('Give a folder, and seconds above 0 if any.', USAGE);
  }
  const folder = callersPath(values.data);
  const { families } = JSON.parse(readFileSync(join(folder, 'best-known.json'), 'utf8')) as { families: Families };
  const tables = Object.entries(families).flatMap(([family, bestKnown]) => {
    const results = readdirSync(join(folder, family))
      .map((file) => ({ file, name: file.replace(/\.[^.]*$/, '') }))
      .filter(({ file }) => file.includes(values.only ?? ''))
      .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }))
      .flatMap(({ file, name }) => {
        const best = bestKnown[name];
        return best === undefined ? [] : [solveOne(join(folder, family, file), name, best, seconds)];
      });
    return results.length === 0
      ? []
      : `${family}, ${String(seconds)} s each\n\n${draw(results)}\n\n${summary(results)}`;
  });
  return Promise.resolve(tables.join('\n\n'));
}

/** @throws {Error} for a bound above a known plan: one of the two would be wrong */
function solveOne(path: string, name: string, best: BestKnown, limit: number): Result {
  process.stderr.write(`${name}\n`);
  const instance = openInstance(readFileSync(path, 'utf8'), null, 1);
  const seconds = runSearch(instance.search, { seconds: limit, epochs: Infinity }, () => undefined);
  const makespan = instance.checkedAnswer()?.makespan ?? null;
  const bound = instance.search.lowerBound;
  if (bound > (best.makespan ?? Infinity)) {
    throw new Error(`${name}: the bound ${String(bound)} is above the best known makespan ${String(best.makespan)}.`);
  }
  return { name, makespan, bound, best, seconds };
}

/** Percent above the best known makespan; null where there is none to compare. */
function gapOf({ makespan, best }: Result): number | null {
  return makespan === null || best.makespan === null ? null : (100 * (makespan - best.makespan)) / best.makespan;
}

const isProved = ({ makespan, bound }: Result): boolean => bound >= (makespan ?? Infinity);

function draw(results: readonly Result[]): string {
  return table(
    ['instance', 'makespan', 'best known', 'gap, %', 'bound', 'best known bound', 'seconds'],
    results.map((result) => [
      result.name,
      result.makespan === null ? 'none' : String(result.makespan),
      result.best.makespan === null ? 'none' : String(result.best.makespan),
      gapOf(result)?.toFixed(2) ?? '',
      isProved(result) ? 'proved' : String(result.bound),
      result.best.lowerBound === null ? '' : String(result.best.lowerBound),
      result.seconds.toFixed(1),
    ]),
  );
}

function summary(results: readonly Result[]): string {
  const gaps = results.map(gapOf).filter((gap) => gap !== null);
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const reached = gaps.filter((gap) => gap <= 0).length;
  const missing = results.filter(({ makespan, best }) => makespan === null && best.makespan !== null).length;
  return (
    `mean gap to best known ${mean.toFixed(2)} %; ${String(reached)} of ${String(gaps.length)} at or below it; ` +
    `${String(results.filter(isProved).length)} of ${String(results.length)} proved; without a plan that is known: ${String(missing)}`
  );
}
