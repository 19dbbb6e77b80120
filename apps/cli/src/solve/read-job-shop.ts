import type { MachineShop } from '@archwright/planner';
import {
  InstanceFileError,
  lineAt,
  MOST_TIME,
  numberAt,
  requireEnd,
  requireLastLine,
  type InstanceLine,
} from './instance-lines.js';

const MOST_JOBS = 10_000;
const MOST_MACHINES = 1000;

function sizeOf(lines: readonly InstanceLine[]): { jobCount: number; machineCount: number } {
  const line = lineAt(lines, 0, 'the line "jobs machines"');
  return {
    jobCount: numberAt(line, 0, 'the number of jobs', [1, MOST_JOBS]),
    machineCount: numberAt(line, 1, 'the number of machines', [1, MOST_MACHINES]),
  };
}

/** No plan takes longer than all work in a row. */
function requireTime(shop: MachineShop, lines: readonly InstanceLine[]): MachineShop {
  const longest = shop.jobs.flat().map((choices) => Math.max(...choices.map(({ duration }) => duration)));
  if (longest.reduce((sum, duration) => sum + duration, 0) <= MOST_TIME) return shop;
  throw new InstanceFileError(
    lines.at(-1)?.number ?? 1,
    `all durations together exceed ${String(MOST_TIME)}; give them in a larger unit.`,
  );
}

/**
 * The usual text of a job shop: "jobs machines", then a line for each job with pairs "machine duration", machines from
 * 0, each once.
 *
 * @throws {InstanceFileError} naming line and reason
 */
export function readJobShop(lines: readonly InstanceLine[]): MachineShop {
  const { jobCount, machineCount } = sizeOf(lines);
  requireEnd(lineAt(lines, 0, 'the sizes'), 2);
  const jobs = Array.from({ length: jobCount }, (_, job) => {
    const line = lineAt(lines, job + 1, `job ${String(job)} of ${String(jobCount)}`);
    const seen = new Set<number>();
    const operations = Array.from({ length: machineCount }, (_ignored, at) => {
      const machine = numberAt(line, 2 * at, 'a machine', [0, machineCount - 1]);
      if (seen.has(machine)) throw new InstanceFileError(line.number, `machine ${String(machine)} comes twice.`);
      seen.add(machine);
      return [{ machine, duration: numberAt(line, 2 * at + 1, 'a duration') }];
    });
    requireEnd(line, 2 * machineCount);
    return operations;
  });
  requireLastLine(lines, jobCount + 1);
  return requireTime({ machineCount, jobs }, lines);
}

/**
 * The usual text of a flexible job shop: "jobs machines" and possibly a mean, then for each job the number of its
 * operations, and for each the number of machines followed by pairs "machine duration", machines from 0.
 *
 * @throws {InstanceFileError} naming line and reason
 */
export function readFlexibleShop(lines: readonly InstanceLine[]): MachineShop {
  const { jobCount, machineCount } = sizeOf(lines);
  const head = lineAt(lines, 0, 'the sizes');
  requireEnd(head, 3);
  const jobs = Array.from({ length: jobCount }, (_, job) => {
    const line = lineAt(lines, job + 1, `job ${String(job)} of ${String(jobCount)}`);
    let at = 1;
    const operations = Array.from({ length: numberAt(line, 0, 'the number of operations', [0, MOST_JOBS]) }, () => {
      const count = numberAt(line, at++, 'the number of machines', [1, machineCount]);
      const choices = Array.from({ length: count }, () => ({
        machine: numberAt(line, at++, 'a machine', [0, machineCount - 1]),
        duration: numberAt(line, at++, 'a duration'),
      }));
      const twice = choices.find(({ machine }, own) => choices.findIndex((other) => other.machine === machine) < own);
      if (twice === undefined) return choices;
      throw new InstanceFileError(line.number, `machine ${String(twice.machine)} comes twice for one operation.`);
    });
    requireEnd(line, at);
    return operations;
  });
  requireLastLine(lines, jobCount + 1);
  requireMean(head, jobs.flat());
  return requireTime({ machineCount, jobs }, lines);
}

/** Published means are rounded, some of them to whole numbers; a third number further off is something else. */
function requireMean({ number, words: [, , word] }: InstanceLine, operations: readonly (readonly unknown[])[]): void {
  if (word === undefined) return;
  const choices = operations.reduce((sum, { length }) => sum + length, 0);
  const mean = operations.length === 0 ? 0 : choices / operations.length;
  if (/^\d+(\.\d*)?$/.test(word) && Math.abs(Number(word) - mean) <= 1) return;
  throw new InstanceFileError(
    number,
    `the third number "${word}" is not accepted. Accepted: the mean number of machines for one operation, here ` +
      `${mean.toFixed(2)}, or none.`,
  );
}
