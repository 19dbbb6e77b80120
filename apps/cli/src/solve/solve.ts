import { DomainError } from '@archwright/kernel';
import { EPOCH_SCHEDULES } from '@archwright/planner';
import { openCrew } from './crew.js';
import { readInstance, type Answer, type InstanceFormat } from './read-instance.js';
import { runSearch, type SearchLimit, type SearchRun } from './run-search.js';

/** Decoded plans are a measure of one kind of search only. */
export class NotCountedError extends DomainError {
  constructor(format: InstanceFormat) {
    super('cli.plans-not-counted', `Decoded plans are counted for psplib only, and this file is ${format}.`, {
      format,
    });
  }
}

export interface SolveOptions {
  /** Null: told by the text itself. */
  readonly format: InstanceFormat | null;
  readonly limit: SearchLimit;
  readonly seed: number;
  /** Independent searches; the best of them counts. */
  readonly streams: number;
  /** They change the time it takes and nothing else. */
  readonly threads: number;
  /** Plans decoded in all before the search ends, for projects; null: not counted. */
  readonly schedules: number | null;
}

const passedSeconds = (): number => performance.now() / 1000;

export interface Solution {
  readonly format: InstanceFormat;
  /** Null where no plan was found. */
  readonly answer: Answer | null;
  readonly run: SearchRun;
}

/**
 * Solves an instance and recomputes every rule of the plan from its text.
 *
 * @param clock what the limit's seconds are counted by; left out: time that passes
 * @throws {InstanceFileError} naming line and reason
 * @throws {NotCountedError} when plans are to be counted of what is no psplib project
 */
export async function solve(
  text: string,
  options: SolveOptions,
  tell: (line: string) => void,
  clock: () => number = passedSeconds,
): Promise<Solution> {
  const { format, checked } = readInstance(text, options.format);
  if (options.schedules !== null && format !== 'psplib') throw new NotCountedError(format);
  const { seed, streams, threads } = options;
  const { epochSchedules, limit } = counted(options);
  const numbers = Array.from({ length: streams }, (_, stream) => ({ seed, stream, epochSchedules }));
  const crew = await openCrew({ text, format, streams: numbers }, Math.min(threads, streams));
  try {
    const run = await runSearch(crew, limit, clock, tell);
    return { format, answer: run.plan === null ? null : checked(run.plan), run };
  } finally {
    await crew.close();
  }
}

/** Counted plans are shared out to the streams, in epochs of no more than usual. */
function counted({ schedules, streams, limit }: SolveOptions): { epochSchedules: number | null; limit: SearchLimit } {
  if (schedules === null) return { epochSchedules: null, limit };
  const share = Math.floor(schedules / streams);
  const epochs = Math.max(1, Math.ceil(share / EPOCH_SCHEDULES));
  return { epochSchedules: Math.floor(share / epochs), limit: { ...limit, epochs } };
}
