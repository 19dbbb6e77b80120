import type { Project, ProjectPlan } from './project.js';

/**
 * Recomputes every rule from the instance alone, sharing nothing with the search.
 *
 * @returns what is broken, in words; empty for a valid plan whose makespan is the stated one
 */
export function projectFaults({ capacities, activities, lags }: Project, { starts, makespan }: ProjectPlan): string[] {
  const faults: string[] = [];
  activities.forEach((_, at) => {
    const start = starts[at];
    if (start === undefined || !Number.isInteger(start) || start < 0) faults.push(`activity ${at} has no start`);
  });
  if (faults.length > 0) return faults;
  for (const { from, to, lag } of lags) {
    if (starts[to]! < starts[from]! + lag) {
      faults.push(`activity ${to} starts at ${starts[to]!}, less than ${lag} after the start of ${from}`);
    }
  }
  // Use rises at starts only, so it is enough to count there.
  for (const now of new Set(starts)) {
    const running = activities.filter(({ duration }, at) => starts[at]! <= now && now < starts[at]! + duration);
    capacities.forEach((capacity, resource) => {
      const used = running.reduce((sum, { needs }) => sum + needs[resource]!, 0);
      if (used > capacity) faults.push(`at ${now}, ${used} of ${capacity} places of resource ${resource} are taken`);
    });
  }
  const end = Math.max(0, ...activities.map(({ duration }, at) => starts[at]! + duration));
  if (end !== makespan) faults.push(`the makespan is ${end}, not ${makespan}`);
  return faults;
}
