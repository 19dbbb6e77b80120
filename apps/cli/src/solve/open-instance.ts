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
} from '@archwright/planner';
import { instanceLines, InstanceFileError, type InstanceLine } from './instance-lines.js';
import { readFlexibleShop, readJobShop } from './read-job-shop.js';
import { readProgenMax } from './read-progen-max.js';
import { readPsplib } from './read-psplib.js';

export const FORMATS = ['jobshop', 'flexible', 'psplib', 'progen-max'] as const;
export type InstanceFormat = (typeof FORMATS)[number];

/** What is said of a plan; `starts` as `[job][operation]` for shops, else a list with the dummies, in file order. */
interface Answer {
  readonly makespan: number;
  readonly starts: readonly (readonly number[])[] | readonly number[];
  /** As `[job][operation]`, for flexible shops. */
  readonly machines?: readonly (readonly number[])[];
}

/** An instance that is being solved. */
export interface OpenInstance {
  readonly format: InstanceFormat;
  readonly search: Search<unknown>;
  /**
   * The best plan so far, after every rule was recomputed from the file; null while there is none.
   *
   * @throws {Error} when a rule is broken, which is a defect of the search
   */
  readonly checkedAnswer: () => Answer | null;
}

/** @throws {InstanceFileError} naming line and reason */
export function openInstance(text: string, format: InstanceFormat | null, seed: number): OpenInstance {
  const lines = instanceLines(text);
  const chosen = format ?? formatOf(lines);
  if (chosen === 'psplib') {
    const project = readPsplib(lines);
    return openProject(chosen, project, new ProjectSearch(project, seed));
  }
  if (chosen === 'progen-max') {
    const project = readProgenMax(lines);
    return openProject(chosen, project, new LagSearch(project, seed));
  }
  return openShop(chosen, chosen === 'jobshop' ? readJobShop(lines) : readFlexibleShop(lines), seed);
}

function openProject(format: InstanceFormat, project: Project, search: Search<ProjectPlan>): OpenInstance {
  return {
    format,
    search,
    checkedAnswer: () => {
      const { best } = search;
      if (best !== null) requireNone(projectFaults(project, best));
      return best;
    },
  };
}

function openShop(format: InstanceFormat, shop: MachineShop, seed: number): OpenInstance {
  const search = new ShopSearch(shop, seed);
  return {
    format,
    search,
    checkedAnswer: () => {
      const { best } = search;
      requireNone(shopFaults(shop, best));
      const { makespan, starts, machines } = best;
      return format === 'flexible' ? { makespan, starts, machines } : { makespan, starts };
    },
  };
}

function requireNone(faults: readonly string[]): void {
  if (faults.length > 0) throw new Error(`The plan found is not valid: ${faults.join('; ')}.`);
}

/** Job shops hold two numbers for each machine in every line, which no line of a flexible shop of their size does. */
function formatOf(lines: readonly InstanceLine[]): InstanceFormat {
  const [head, ...rest] = lines;
  if (head === undefined) throw new InstanceFileError(1, 'the file holds nothing.');
  if (lines.some(({ words }) => words.join(' ').startsWith('PRECEDENCE RELATIONS'))) return 'psplib';
  if (lines.some(({ words }) => words.at(-1)?.endsWith(']'))) return 'progen-max';
  const words = 2 * Number(head.words[1]);
  return head.words.length === 2 && rest.every((line) => line.words.length === words) ? 'jobshop' : 'flexible';
}
