import type { MachineShop, ShopPlan } from './machine-shop.js';

/**
 * Recomputes every rule from the instance alone, sharing nothing with the search.
 *
 * @returns what is broken, in words; empty for a valid plan whose makespan is the stated one
 */
export function shopFaults({ machineCount, jobs }: MachineShop, plan: ShopPlan): string[] {
  const faults: string[] = [];
  const busy: { start: number; end: number; name: string }[][] = Array.from({ length: machineCount }, () => []);
  let makespan = 0;
  jobs.forEach((operations, job) => {
    let free = 0;
    operations.forEach((choices, index) => {
      const name = `operation ${index} of job ${job}`;
      const start = plan.starts[job]?.[index];
      const machine = plan.machines[job]?.[index];
      const chosen = choices.find((choice) => choice.machine === machine);
      if (start === undefined || !Number.isInteger(start)) faults.push(`${name} has no start`);
      else if (machine === undefined || chosen === undefined) faults.push(`${name} is on a machine that may not do it`);
      else {
        const end = start + chosen.duration;
        if (start < free) faults.push(`${name} starts at ${start}, before ${free}`);
        busy[machine]!.push({ start, end, name });
        free = end;
        makespan = Math.max(makespan, end);
      }
    });
  });
  busy.forEach((spans, machine) => {
    spans.sort((a, b) => a.start - b.start || a.end - b.end);
    spans.slice(1).forEach((later, at) => {
      const earlier = spans[at]!;
      if (later.start < earlier.end) faults.push(`${earlier.name} and ${later.name} meet on machine ${machine}`);
    });
  });
  if (makespan !== plan.makespan) faults.push(`the makespan is ${makespan}, not ${plan.makespan}`);
  return faults;
}
