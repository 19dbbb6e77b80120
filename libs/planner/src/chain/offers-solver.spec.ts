import loadHighs from 'highs';
import { DomainError, seededRandom } from '@archwright/kernel';
import { IntegerModel } from './integer-model.twin.js';
import type { ChainOffers, ChainProblem, ChainVector } from './model.js';
import { planOffers } from './offers.js';
import { FAMILIES, tinyProblem, type ProblemSize } from './tiny-problem.twin.js';

/** The short run's count; the long run sets 200. */
const CASES = Number(process.env['ARCHWRIGHT_SOLVER_CASES'] ?? 36);
/** Far too much to try everything, and soon solved. */
const MIDDLING: ProblemSize = { day: 8, days: [6, 2], visits: [3, 2], mostOperations: 3 };

const beats = (one: ChainVector, other: ChainVector): boolean =>
  one.deliveryDay <= other.deliveryDay &&
  one.wishesBroken <= other.wishesBroken &&
  one.clinicianChanges <= other.clinicianChanges &&
  one.clinicChanges <= other.clinicChanges;

/** Buffers count from what a laboratory could do at best, which no program states; other specs hold them. */
function middlingProblem(index: number): ChainProblem {
  const family = FAMILIES[index % FAMILIES.length]!;
  return {
    ...tinyProblem(seededRandom(20270104, index), family, MIDDLING),
    placement: { bufferSteps: [], mostCost: 2 },
  };
}

function offersOrNone(problem: ChainProblem): ChainOffers {
  try {
    return planOffers(problem, 1);
  } catch (error) {
    if (error instanceof DomainError) return { front: [], offers: [] };
    throw error;
  }
}

/** Solves a program; gives its least cost, or `null` when it has no solution. */
async function openSolver(): Promise<(model: string) => number | null> {
  // The types of the package describe its CommonJS build, where the loader is a member of the default.
  const highs = await (loadHighs as unknown as typeof loadHighs.default)();
  const options = { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 };
  const solve = (model: string) => {
    try {
      return highs.solve(model, options);
    } catch {
      // Its presolve takes a broken row for a solution now and then, notices it and gives up.
      return highs.solve(model, { ...options, presolve: 'off' });
    }
  };
  return (model) => {
    const { Status, ObjectiveValue } = solve(model);
    if (Status !== 'Optimal' && Status !== 'Infeasible') throw new Error(`The solver ended with "${Status}"`);
    return Status === 'Optimal' ? Math.round(ObjectiveValue) : null;
  };
}

describe('offers beside a general solver', () => {
  it('have the front and the ties of a mixed-integer program that shares no code with the search', async () => {
    const solve = await openSolver();
    let feasible = 0;
    let severalVectors = 0;
    for (let index = 0; index < CASES; index++) {
      const problem = middlingProblem(index);
      const { front, offers } = offersOrNone(problem);
      const model = new IntegerModel(problem);
      expect([index, solve(model.outside(front))]).toEqual([index, null]);
      for (const vector of front) {
        expect(front.filter((other) => beats(other, vector))).toEqual([vector]);
        const least = solve(model.cheapestWithin(vector));
        expect([index, least]).not.toEqual([index, null]);
        if (offers[0]?.vector.deliveryDay !== vector.deliveryDay || vector !== front[0]) continue;
        const { placementCost, startSum } = offers[0].ties;
        expect([index, least]).toEqual([
          index,
          placementCost * (problem.slotCount * problem.visits.length + 1) + startSum,
        ]);
      }
      if (front.length > 0) feasible++;
      if (front.length > 1) severalVectors++;
    }
    expect(feasible).toBeGreaterThan(CASES / 3);
    expect(severalVectors).toBeGreaterThan(CASES / 8);
    if (process.env['ARCHWRIGHT_SOLVER_CASES'] !== undefined) {
      process.stdout.write(`${CASES} cases, ${feasible} feasible, ${severalVectors} with several vectors\n`);
    }
  }, 3_600_000);
});
