import {
  LagSearch,
  projectFaults,
  ProjectSearch,
  shopFaults,
  ShopSearch,
  type MachineShop,
  type Project,
  type ProjectPlan,
  type Search,
  type ShopPlan,
} from '@archwright/planner';
import { instanceLines, InstanceFileError, type InstanceLine } from './instance-lines.js';
import { readFlexibleShop, readJobShop } from './read-job-shop.js';
import { readProgenMax } from './read-progen-max.js';
import { readPsplib } from './read-psplib.js';

export const FORMATS = ['jobshop', 'flexible', 'psplib', 'progen-max'] as const;
export type InstanceFormat = (typeof FORMATS)[number];

/** What is said of a plan; `starts` as `[job][operation]` for shops, else a list with the dummies, in file order. */
export interface Answer {
  readonly makespan: number;
  readonly starts: readonly (readonly number[])[] | readonly number[];
  /** As `[job][operation]`, for flexible shops. */
  readonly machines?: readonly (readonly number[])[];
}

export type Plan = ShopPlan | ProjectPlan;

/** One of several independent searches. */
export interface StreamSettings {
  readonly seed: number;
  readonly stream: number;
  /** Plans of an epoch, for projects whose decoded plans are counted. */
  readonly epochSchedules: number | null;
}

export interface Instance {
  readonly format: InstanceFormat;
  readonly search: (settings: StreamSettings) => Search<Plan>;
  /**
   * A plan as it is shown, after every rule was recomputed from the file.
   *
   * @throws {Error} when a rule is broken, which is a defect of the search
   */
  readonly checked: (plan: Plan) => Answer;
}

/** @throws {InstanceFileError} naming line and reason */
export function readInstance(text: string, format: InstanceFormat | null): Instance {
  const lines = instanceLines(text);
  const chosen = format ?? formatOf(lines);
  if (chosen === 'psplib') {
    const project = readPsplib(lines);
    return projectInstance(
      chosen,
      project,
      ({ seed, stream, epochSchedules }) => new ProjectSearch(project, seed, stream, epochSchedules),
    );
  }
  if (chosen === 'progen-max') {
    const project = readProgenMax(lines);
    return projectInstance(chosen, project, ({ seed, stream }) => new LagSearch(project, seed, stream));
  }
  return shopInstance(chosen, chosen === 'jobshop' ? readJobShop(lines) : readFlexibleShop(lines));
}

function projectInstance(format: InstanceFormat, project: Project, search: Instance['search']): Instance {
  return {
    format,
    search,
    checked: (plan) => {
      const { makespan, starts } = plan as ProjectPlan;
      requireNone(projectFaults(project, { makespan, starts }));
      return { makespan, starts };
    },
  };
}

function shopInstance(format: InstanceFormat, shop: MachineShop): Instance {
  return {
    format,
    search: ({ seed, stream }) => new ShopSearch(shop, seed, stream),
    checked: (plan) => {
      const { makespan, starts, machines } = plan as ShopPlan;
      requireNone(shopFaults(shop, { makespan, starts, machines }));
      return format === 'flexible' ? { makespan, starts, machines } : { makespan, starts };
    },
  };
}

function requireNone(faults: readonly string[]): void {
  if (faults.length > 0) throw new Error(`The plan found is not valid: ${faults.join('; ')}.`);
}

/**
 * Job shops hold two numbers for each machine in every line. Lines of a flexible shop may do so as well, and then mean
 * another problem, so that nobody but the caller can say which it is.
 *
 * @throws {InstanceFileError} for a file that holds nothing, or lines of either
 */
function formatOf(lines: readonly InstanceLine[]): InstanceFormat {
  const [head, ...rest] = lines;
  if (head === undefined) throw new InstanceFileError(1, 'the file holds nothing.');
  if (lines.some(({ words }) => words.join(' ').startsWith('PRECEDENCE RELATIONS'))) return 'psplib';
  if (lines.some(({ words }) => words.at(-1)?.endsWith(']'))) return 'progen-max';
  const words = 2 * Number(head.words[1]);
  if (head.words.length !== 2 || !rest.every((line) => line.words.length === words)) return 'flexible';
  if (!isFlexible(lines)) return 'jobshop';
  throw new InstanceFileError(
    rest[0]?.number ?? head.number,
    'from here on the lines are those of a job shop and of a flexible job shop, which differ. Say which it is with ' +
      '--format jobshop or --format flexible.',
  );
}

function isFlexible(lines: readonly InstanceLine[]): boolean {
  try {
    readFlexibleShop(lines);
    return true;
  } catch (error) {
    if (error instanceof InstanceFileError) return false;
    throw error;
  }
}
