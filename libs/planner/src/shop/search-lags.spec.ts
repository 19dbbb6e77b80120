import { seededRandom } from '@archwright/kernel';
import { shortestProject } from './exhaustive.twin.js';
import type { Project, StartLag } from './project.js';
import { LagSearch } from './search-lags.js';
import { projectFaults } from './verify-project.js';

const CASES = 300;
/** Longer than all durations and waits of a tiny project in a row. */
const HORIZON = 14;
const EPOCHS = 20;

/** Up to five activities on one or two resources; half of the pairs that wait may not wait for long. */
function tinyProject(index: number): Project {
  const random = seededRandom(20270105, index);
  const capacities = Array.from({ length: 1 + random.nextBelow(2) }, () => 1 + random.nextBelow(3));
  const activities = Array.from({ length: 2 + random.nextBelow(4) }, () => ({
    duration: random.nextBelow(3),
    needs: capacities.map((capacity) => random.nextBelow(capacity + 1)),
  }));
  const lags: StartLag[] = [];
  activities.forEach(({ duration }, from) => {
    for (let to = from + 1; to < activities.length; to++) {
      if (random.nextBelow(3) > 0) continue;
      const lag = random.nextBelow(2) === 0 ? duration : random.nextBelow(3);
      lags.push({ from, to, lag });
      if (random.nextBelow(2) === 0) lags.push({ from: to, to: from, lag: -lag - random.nextBelow(2) });
    }
  });
  return { capacities, activities, lags };
}

describe('search of projects with longest waits', () => {
  it('finds and proves what trying everything finds, or that there is no plan', () => {
    const counts = { planned: 0, impossible: 0 };
    for (let index = 0; index < CASES; index++) {
      const project = tinyProject(index);
      const search = new LagSearch(project, index);
      for (let epoch = 0; epoch < EPOCHS; epoch++) search.runEpoch();
      const { best, lowerBound } = search;
      const shortest = shortestProject(project, HORIZON);
      const faults = best === null ? [] : projectFaults(project, best);
      expect({ index, makespan: best?.makespan ?? Infinity, lowerBound, faults }).toEqual({
        index,
        makespan: shortest,
        lowerBound: shortest,
        faults: [],
      });
      counts[shortest === Infinity ? 'impossible' : 'planned']++;
    }
    expect(counts.planned).toBeGreaterThan(100);
    expect(counts.impossible).toBeGreaterThan(10);
  });
});
