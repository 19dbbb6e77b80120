import type { ChainCache } from './cache.js';
import { ContradictoryWorkError } from './errors.js';
import type { ChainPhase, ChainProblem, LabAlternative } from './model.js';
import { smallestSolution } from './net.js';
import { branchesOf } from './phases.js';
import { roomFor } from './room.js';

/** The laboratory as if nobody else had work there: every place free while its centre is open. */
function emptied(lab: LabAlternative): LabAlternative {
  return {
    ...lab,
    operations: lab.operations.map((operation) => ({
      ...operation,
      places: operation.places.map((place) => ({
        ...place,
        // Unattended work may run on through closed hours on any place.
        free: new Uint32Array(place.free.length).fill(0xffffffff),
      })),
    })),
  };
}

/** The laboratory without the longest waits of some arcs. */
function lifted(lab: LabAlternative, keys: readonly string[]): LabAlternative {
  const without = <Arc extends LabAlternative['arcs'][number]>(arc: Arc): Arc => {
    if (!keys.includes(arc.key)) return arc;
    const byClinic = arc.byClinic && new Map([...arc.byClinic].map(([clinic, { lo }]) => [clinic, { lo, hi: null }]));
    return { ...arc, hi: null, byClinic };
  };
  return { ...lab, arcs: lab.arcs.map(without) };
}

/** Whether the work can be done between its visits at all, in this laboratory alone and between any accepted clinics. */
function fits(problem: ChainProblem, index: number, lab: LabAlternative, cache: ChainCache): boolean {
  const phase = problem.phases[index]!;
  const only: ChainPhase = { ...phase, labs: [lab] };
  const stated = { ...problem, phases: problem.phases.map((each, at) => (at === index ? only : each)) };
  const visits = phase.after === null ? [phase.before] : [phase.after, phase.before];
  const choices = visits.reduce<number[][]>(
    (rows, visit) => rows.flatMap((row) => problem.visits[visit]!.options.map((_, option) => [...row, option])),
    [[]],
  );
  return choices.some((options) => {
    const places = options.map((option, at) => {
      const chosen = problem.visits[visits[at]!]!.options[option]!;
      return { ...chosen, room: roomFor(chosen, problem.slotCount, cache) };
    });
    const branches = branchesOf(stated, { phases: [index], visits }, places, cache, false);
    return branches.some(({ net }) => smallestSolution(net) !== null);
  });
}

function longestWaits({ arcs }: LabAlternative): string[] {
  const isLongest = ({ hi, byClinic }: LabAlternative['arcs'][number]): boolean =>
    hi !== null || [...(byClinic?.values() ?? [])].some((tables) => tables.hi !== null);
  return [...new Set(arcs.filter(isLongest).map(({ key }) => key))];
}

/**
 * Looks for laboratory work that could not keep its longest waits even on empty benches. Work that would not fit the axis
 * without them proves nothing, and is no contradiction.
 *
 * @throws {ContradictoryWorkError} naming the waits of which any one, if lifted, would make the work possible
 */
export function requireWork(problem: ChainProblem, cache: ChainCache): void {
  problem.phases.forEach(({ key, labs }, index) => {
    const waits = new Set<string>();
    for (const lab of labs) {
      const empty = emptied(lab);
      const keys = longestWaits(empty);
      if (fits(problem, index, empty, cache) || !fits(problem, index, lifted(empty, keys), cache)) return;
      const single = keys.filter((wait) => fits(problem, index, lifted(empty, [wait]), cache));
      for (const wait of single.length === 0 ? keys : single) waits.add(wait);
    }
    throw new ContradictoryWorkError(key, [...waits]);
  });
}
