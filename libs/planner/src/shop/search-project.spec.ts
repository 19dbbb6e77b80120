import { seededRandom } from '@archwright/kernel';
import { shortestProject } from './exhaustive.twin.js';
import { NeedAboveCapacityError, UnorderedProjectError } from './project-errors.js';
import type { Project } from './project.js';
import { ProjectSearch } from './search-project.js';
import { projectFaults } from './verify-project.js';

const CASES = 200;

/** Up to six activities on up to two resources; some waits are longer or shorter than the activity before. */
function tinyProject(index: number): Project {
  const random = seededRandom(20270104, index);
  const capacities = Array.from({ length: 1 + random.nextBelow(2) }, () => 1 + random.nextBelow(3));
  const activities = Array.from({ length: 1 + random.nextBelow(6) }, () => ({
    duration: random.nextBelow(4),
    needs: capacities.map((capacity) => random.nextBelow(capacity + 1)),
  }));
  const lags = activities.flatMap(({ duration }, from) =>
    activities
      .map((_, to) => ({ from, to, lag: random.nextBelow(4) === 0 ? random.nextBelow(4) - 1 : duration }))
      .filter(({ to }) => to > from && random.nextBelow(4) === 0),
  );
  return { capacities, activities, lags };
}

function solve(project: Project, seed: number, epochs: number): ProjectSearch {
  const search = new ProjectSearch(project, seed);
  for (let epoch = 0; epoch < epochs; epoch++) search.runEpoch();
  return search;
}

describe('search of projects', () => {
  it('finds what trying everything finds, with a valid plan and a bound that is not above it', () => {
    let proved = 0;
    for (let index = 0; index < CASES; index++) {
      const project = tinyProject(index);
      const { best, lowerBound } = solve(project, index, 1);
      const shortest = shortestProject(project, best.makespan);
      expect({ index, makespan: best.makespan, faults: projectFaults(project, best) }).toEqual({
        index,
        makespan: shortest,
        faults: [],
      });
      expect(lowerBound).toBeLessThanOrEqual(shortest);
      if (lowerBound === shortest) proved++;
    }
    // A bound of 0 would pass as well: most of these are small enough to be proved.
    expect(proved).toBeGreaterThan(CASES / 2);
  });

  it('refuses a need that nothing can meet, and waits in a circle', () => {
    const activity = { duration: 2, needs: [2] };
    expect(() => new ProjectSearch({ capacities: [1], activities: [activity], lags: [] }, 1)).toThrow(
      NeedAboveCapacityError,
    );
    const circle = [
      { from: 0, to: 1, lag: 2 },
      { from: 1, to: 0, lag: -5 },
    ];
    expect(() => new ProjectSearch({ capacities: [2], activities: [activity, activity], lags: circle }, 1)).toThrow(
      UnorderedProjectError,
    );
  });
});

describe('faults of a project plan', () => {
  const project: Project = {
    capacities: [2],
    activities: [
      { duration: 3, needs: [1] },
      { duration: 2, needs: [2] },
    ],
    lags: [{ from: 0, to: 1, lag: 3 }],
  };

  it.each([
    ['nothing in a valid plan', { starts: [0, 3], makespan: 5 }, /^$/],
    ['a wait that is too short', { starts: [0, 2], makespan: 4 }, /less than 3 after the start of 0/],
    ['too many places taken', { starts: [2, 4], makespan: 6 }, /at 4, 3 of 2 places/],
    ['a start before the beginning', { starts: [-1, 3], makespan: 5 }, /activity 0 has no start/],
    ['a makespan that is too large', { starts: [0, 3], makespan: 6 }, /the makespan is 5, not 6/],
  ])('names %s', (_, plan, words) => {
    expect(projectFaults(project, plan).join('; ')).toMatch(words);
  });
});
