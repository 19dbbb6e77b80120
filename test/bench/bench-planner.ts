import { writeFileSync } from 'node:fs';
import { ShopSearch, type MachineShop } from '@archwright/planner';
import { seededRandom } from '@archwright/kernel';
import { callersPath, readArguments, UsageError } from '../../apps/cli/src/arguments.js';
import { solve, type SolveOptions } from '../../apps/cli/src/solve/solve.js';
import { machine, table } from './figures.js';
import { instancesOf, publishedInstances, type KnownInstance } from './known-instances.js';

const USAGE = `npm run bench:planner [-- --data FOLDER] [--seconds S | --schedules N] [--threads N] [--seed N] [--only TEXT] [--out FILE] [--processor-time]
FOLDER holds folders of instances, named in its best-known.json as families.FOLDER.INSTANCE = { makespan, lowerBound };
without one, the instances of the tests are solved. --schedules: the projects only, each by so many decoded plans.
--processor-time: seconds are of processor time by thread, for a machine on which others are at work.
--only: instances whose file name holds TEXT; several texts with commas between them.
--out: where the figures go as JSON as well; dist/bench-planner.json when left out.`;
const DEFAULT_SECONDS = 10;

interface Result {
  readonly name: string;
  readonly makespan: number | null;
  readonly bound: number | null;
  readonly isProved: boolean;
  readonly bestKnown: number | null;
  readonly bestKnownBound: number | null;
  /** Above the best known makespan; null where one of the two is missing. */
  readonly gapPercent: number | null;
  readonly seconds: number;
  readonly epochs: number;
}

/** Solves published instances from one seed, checks every plan, and compares with the best known values. */
export async function benchPlanner(args: readonly string[]): Promise<string> {
  const { values, positionals } = readArguments(args, USAGE, {
    data: { type: 'string' },
    seconds: { type: 'string' },
    schedules: { type: 'string' },
    threads: { type: 'string' },
    seed: { type: 'string' },
    only: { type: 'string' },
    out: { type: 'string' },
    'processor-time': { type: 'boolean' },
  });
  if (positionals.length > 0) throw new UsageError(`"${positionals.join(' ')}" is not understood.`, USAGE);
  const schedules = values.schedules === undefined ? null : positive('schedules', values.schedules);
  const seconds = positive('seconds', values.seconds ?? String(DEFAULT_SECONDS));
  const threads = positive('threads', values.threads ?? '2');
  const options: SolveOptions = {
    format: null,
    limit: { seconds: schedules === null ? seconds : Infinity, epochs: Infinity },
    seed: positive('seed', values.seed ?? '1'),
    streams: threads,
    threads,
    schedules,
  };
  const instances = values.data === undefined ? publishedInstances() : instancesOf(callersPath(values.data));
  const texts = (values.only ?? '').split(',');
  const clock = values['processor-time'] === true ? () => processorSeconds() / threads : undefined;
  const wanted = instances.filter(
    ({ file, isProject }) => texts.some((text) => file.includes(text)) && (schedules === null || isProject),
  );
  const families: Record<string, Result[]> = {};
  for (const instance of wanted) (families[instance.family] ??= []).push(await solveOne(instance, options, clock));
  const movesPerMs = Math.round(tabuMovesPerMs());
  const out = values.out === undefined ? 'dist/bench-planner.json' : callersPath(values.out);
  const limit = schedules === null ? { seconds, processorTime: clock !== undefined } : { schedules };
  const figures = { machine: machine(), threads, seed: options.seed, ...limit, tabuMovesPerMs: movesPerMs, families };
  writeFileSync(out, `${JSON.stringify(figures, null, 2)}\n`);
  process.stderr.write(`The figures stand in ${out} as well.\n`);
  const each =
    schedules === null
      ? `${String(seconds)} s${clock === undefined ? '' : ' of processor time a thread'}`
      : `${String(schedules)} decoded plans`;
  return [
    ...Object.entries(families).map(
      ([family, results]) =>
        `${family}, ${each} each, threads: ${String(threads)}\n\n${draw(results)}\n\n${summary(results)}`,
    ),
    `Tabu moves on a random shop of 15 x 15: ${String(movesPerMs)} a millisecond of processor time.`,
  ].join('\n\n');
}

function positive(name: string, text: string): number {
  const value = Number(text);
  if (value > 0 && (name === 'seconds' || Number.isInteger(value))) return value;
  throw new UsageError(`--${name} "${text}" is not accepted; give a number above 0.`, USAGE);
}

/** @throws {Error} for a bound above a known plan: one of the two would be wrong */
async function solveOne(
  { text, name, best }: KnownInstance,
  options: SolveOptions,
  clock: (() => number) | undefined,
): Promise<Result> {
  process.stderr.write(`${name}\n`);
  const { answer, run } = await solve(text, options, () => undefined, clock);
  const { lowerBound, seconds, epochs } = run;
  if (lowerBound > (best.makespan ?? Infinity)) {
    throw new Error(
      `${name}: the bound ${String(lowerBound)} is above the best known makespan ${String(best.makespan)}.`,
    );
  }
  const makespan = answer?.makespan ?? null;
  return {
    name,
    makespan,
    bound: Number.isFinite(lowerBound) ? lowerBound : null,
    isProved: lowerBound >= (makespan ?? Infinity),
    bestKnown: best.makespan,
    bestKnownBound: best.lowerBound,
    gapPercent: makespan === null || best.makespan === null ? null : (100 * (makespan - best.makespan)) / best.makespan,
    seconds,
    epochs,
  };
}

function draw(results: readonly Result[]): string {
  const told = (value: number | null): string => (value === null ? 'none' : String(value));
  return table(
    ['instance', 'makespan', 'best known', 'gap, %', 'bound', 'best known bound', 'seconds', 'epochs'],
    results.map((result) => [
      result.name,
      told(result.makespan),
      told(result.bestKnown),
      result.gapPercent?.toFixed(2) ?? '',
      result.isProved ? 'proved' : told(result.bound),
      result.bestKnownBound === null ? '' : String(result.bestKnownBound),
      result.seconds.toFixed(1),
      String(result.epochs),
    ]),
  );
}

function summary(results: readonly Result[]): string {
  const gaps = results.flatMap(({ gapPercent }) => gapPercent ?? []);
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const reached = gaps.filter((gap) => gap <= 0).length;
  const missing = results.filter(({ makespan, bestKnown }) => makespan === null && bestKnown !== null).length;
  const proved = results.filter(({ isProved }) => isProved).length;
  return (
    `mean gap to best known ${mean.toFixed(2)} %; ${String(reached)} of ${String(gaps.length)} at or below it; ` +
    `${String(proved)} of ${String(results.length)} proved; without a plan that is known: ${String(missing)}`
  );
}

/** Of all threads. */
function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000_000;
}

/** Of one search on a shop of its own, after the engine has compiled it. */
function tabuMovesPerMs(): number {
  const size = 15;
  const random = seededRandom(1, 0);
  const jobs = Array.from({ length: size }, () => {
    const machines = Array.from({ length: size }, (_, each) => each);
    for (let at = size - 1; at > 0; at--) {
      const other = random.nextBelow(at + 1);
      [machines[at], machines[other]] = [machines[other] ?? 0, machines[at] ?? 0];
    }
    return machines.map((each) => [{ machine: each, duration: 1 + random.nextBelow(99) }]);
  });
  const shop: MachineShop = { machineCount: size, jobs };
  const search = new ShopSearch(shop, 1);
  for (let epoch = 0; epoch < 5; epoch++) search.runEpoch();
  const [moves, from] = [search.moves, processorSeconds()];
  for (let epoch = 0; epoch < 20; epoch++) search.runEpoch();
  return (search.moves - moves) / (1000 * (processorSeconds() - from));
}
