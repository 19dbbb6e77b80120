import { DomainError } from '@archwright/kernel';
import { bestObjective } from './exhaustive.twin.js';
import type { WorkloadProblem } from './model.js';
import { ORDER, type WorkloadAim } from './objective.js';
import { bestFind, WorkloadSearch } from './search-workload.js';
import { tinyWorkload } from './tiny-workload.twin.js';
import { workloadFaults } from './verify-workload.js';

/** Trying everything takes a quarter of a second each; `ARCHWRIGHT_WORKLOAD_CASES` tries more. */
const CASES = Number(process.env['ARCHWRIGHT_WORKLOAD_CASES'] ?? 30);

function search(problem: WorkloadProblem, epochs: number, aim: WorkloadAim = 'fewest-moves', streams = 2, seed = 7) {
  const found = new WorkloadSearch(problem, { seed, streams, aim });
  for (let epoch = 0; epoch < epochs; epoch++) found.runEpoch();
  return found;
}

/** Null where an operation fits nowhere, which the search refuses. */
function searchIfRoom(problem: WorkloadProblem, epochs: number, aim: WorkloadAim): WorkloadSearch | null {
  try {
    return search(problem, epochs, aim);
  } catch (error) {
    expect((error as DomainError).code).toBe('planner.no-room-at-centre');
    return null;
  }
}

describe('search of a workload', () => {
  it.each<WorkloadAim>(['fewest-moves', 'level-load'])('finds what trying everything finds (%s)', (aim) => {
    let compared = 0;
    let late = 0;
    let moved = 0;
    for (let index = 0; index < CASES; index++) {
      const problem = tinyWorkload(index);
      const found = searchIfRoom(problem, 3, aim);
      if (found === null) continue;
      const { best, bound } = found;
      expect({ index, faults: workloadFaults(problem, best) }).toEqual({ index, faults: [] });
      const expected = bestObjective(problem, ORDER[aim]);
      if (expected === null) {
        // Nothing fits all operations: the search leaves one without a place, which the twin does not try.
        expect(best.objective.violations).toBeGreaterThanOrEqual(problem.slotCount);
        continue;
      }
      compared++;
      expect({ index, objective: best.objective }).toEqual({ index, objective: expected });
      if (expected.violations === 0) expect(bound.lateness).toBeLessThanOrEqual(expected.lateness);
      if (expected.lateness > 0) late++;
      if (expected.disruption > 0) moved++;
    }
    expect(compared).toBeGreaterThan(CASES / 2);
    expect(Math.min(late, moved)).toBeGreaterThan(CASES / 15);
  });

  it('makes the same plan again from seed and epochs, whatever else was searched', () => {
    const problem = tinyWorkload(5);
    const one = search(problem, 4, 'level-load', 3, 11);
    search(problem, 2, 'level-load', 1, 12);
    const again = search(problem, 4, 'level-load', 3, 11);
    expect(again.best).toEqual(one.best);
    expect(again.epochs).toBe(one.epochs);
  });
});

describe('streams of a workload on several threads', () => {
  it.each([1, 2, 3])('make the plan that they make on one (%i)', (threads) => {
    for (const [index, aim] of [[5, 'level-load'] as const, [4, 'fewest-moves'] as const]) {
      const problem = tinyWorkload(index);
      const streams = 3;
      const members = Array.from({ length: threads }, (_, member) => {
        const own = [0, 1, 2].filter((stream) => stream % threads === member);
        return new WorkloadSearch(problem, { seed: 11, streams, aim }, own);
      });
      for (let epoch = 0; epoch < 12 && !members[0]!.isProved; epoch++) {
        // The last to answer is heard first.
        const find = bestFind(members.map((member) => member.runStreams()).reverse(), aim);
        for (const member of members) member.meet(find);
      }
      const alone = search(problem, 12, aim, streams, 11);
      for (const { best, epochs } of members)
        expect({ best, epochs }).toEqual({ best: alone.best, epochs: alone.epochs });
    }
  });
});

describe('faults of a workload plan', () => {
  const problem = tinyWorkload(5);
  const { best } = search(problem, 1);
  const first = best.placed[0]!;
  const withFirst = (change: Partial<typeof first>) => ({
    ...best,
    placed: [{ ...first, ...change }, ...best.placed.slice(1)],
  });
  const [job, ...others] = problem.jobs;
  const [alternative] = job!.alternatives;
  const [operation, ...further] = alternative!.operations;
  const comesLater = { ...operation!, firstSlot: first.startSlot + 1 };
  const later: WorkloadProblem = {
    ...problem,
    jobs: [{ ...job!, alternatives: [{ ...alternative!, operations: [comesLater, ...further] }] }, ...others],
  };

  it.each([
    ['nothing in a valid plan', problem, best, /^$/],
    ['a start before the work is there', later, best, /starts before/],
    ['an end that the hours do not give', problem, withFirst({ endSlot: first.endSlot + 1 }), /ends at/],
    ['a place of another centre', problem, withFirst({ place: 'place 9.9' }), /no place/],
    [
      'a better objective than it has',
      problem,
      { ...best, objective: { ...best.objective, inProgress: 0 } },
      /the objective is/,
    ],
  ])('names %s', (_, given, plan, words) => {
    expect(workloadFaults(given, plan).join('; ')).toMatch(words);
  });
});
