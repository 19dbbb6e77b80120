import type { MachineShop } from './machine-shop.js';
import type { Project } from './project.js';

/** The shortest makespan by trying every order in which operations can be appended, on every machine. */
export function shortestShop({ machineCount, jobs }: MachineShop): number {
  let best = Infinity;
  const append = (done: readonly number[], jobFree: readonly number[], machineFree: readonly number[]): void => {
    if (Math.max(0, ...jobFree) >= best) return;
    if (jobs.every(({ length }, job) => done[job] === length)) {
      best = Math.max(0, ...jobFree);
      return;
    }
    jobs.forEach((operations, job) => {
      for (const { machine, duration } of operations[done[job]!] ?? []) {
        const end = Math.max(jobFree[job]!, machineFree[machine]!) + duration;
        append(done.with(job, done[job]! + 1), jobFree.with(job, end), machineFree.with(machine, end));
      }
    });
  };
  append(
    jobs.map(() => 0),
    jobs.map(() => 0),
    Array.from({ length: machineCount }, () => 0),
  );
  return best;
}

/** The shortest makespan by trying every start of every activity, unit by unit, in the order of their numbers. */
export function shortestProject({ capacities, activities, lags }: Project, horizon: number): number {
  let best = Infinity;
  const starts: number[] = [];
  const fits = (id: number): boolean => {
    const end = starts[id]! + activities[id]!.duration;
    for (const { from, to, lag } of lags) {
      if (Math.max(from, to) === id && starts[to]! < starts[from]! + lag) return false;
    }
    for (let now = starts[id]!; now < end; now++) {
      const isOver = capacities.some((capacity, resource) => {
        let used = 0;
        for (let other = 0; other <= id; other++) {
          const { duration, needs } = activities[other]!;
          if (starts[other]! <= now && now < starts[other]! + duration) used += needs[resource]!;
        }
        return used > capacity;
      });
      if (isOver) return false;
    }
    return true;
  };
  const place = (id: number, makespan: number): void => {
    if (makespan >= best) return;
    if (id === activities.length) {
      best = makespan;
      return;
    }
    const { duration } = activities[id]!;
    for (let start = 0; start + duration <= horizon; start++) {
      starts[id] = start;
      if (fits(id)) place(id + 1, Math.max(makespan, start + duration));
    }
    starts.length = id;
  };
  place(0, 0);
  return best;
}
