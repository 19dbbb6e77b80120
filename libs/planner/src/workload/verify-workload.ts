import type {
  PlacedOperation,
  WorkloadCentre,
  WorkloadObjective,
  WorkloadOperation,
  WorkloadPlan,
  WorkloadProblem,
} from './model.js';

const isSet = (bits: Uint32Array, slot: number): boolean => (bits[Math.floor(slot / 32)]! & (2 ** (slot % 32))) !== 0;

/**
 * Recomputes every rule and the objective from the problem alone, slot by slot, sharing nothing with the search.
 *
 * @returns what is broken, in words; empty for a valid plan with the stated objective. Limits that are exceeded break
 * nothing as long as the objective says so.
 */
export function workloadFaults(problem: WorkloadProblem, plan: WorkloadPlan): string[] {
  const faults: string[] = [];
  const taken = new Map<string, string>();
  for (const placed of plan.placed) {
    const operation = operationOf(problem, plan, placed);
    const name = `operation ${placed.operation} of job ${placed.job}`;
    if (placed.startSlot < 0) continue;
    const centre = problem.centres[operation.centre]!;
    const { end, held } = walk(operation, centre, placed.startSlot);
    if (!isSet(centre.open, placed.startSlot)) faults.push(`${name} starts while its centre is closed`);
    if (end !== placed.endSlot || end > problem.slotCount) faults.push(`${name} ends at ${end}, not ${placed.endSlot}`);
    if (placed.startSlot < operation.firstSlot) faults.push(`${name} starts before ${operation.firstSlot}`);
    if (end < operation.endFromSlot) faults.push(`${name} ends before ${operation.endFromSlot}`);
    faults.push(...placeFaults(problem, plan, placed, held, taken, name));
  }
  faults.push(...waitFaults(problem, plan));
  const expected = JSON.stringify(objectiveOf(problem, plan));
  const stated = JSON.stringify(inOrder(plan.objective));
  if (expected !== stated) faults.push(`the objective is ${expected}, not ${stated}`);
  return faults;
}

const inOrder = ({ violations, lateness, disruption, overload, inProgress }: WorkloadObjective) => ({
  violations,
  lateness,
  disruption,
  overload,
  inProgress,
});

function operationOf(problem: WorkloadProblem, { chosen }: WorkloadPlan, placed: PlacedOperation): WorkloadOperation {
  return problem.jobs[placed.job]!.alternatives[chosen[placed.job]!]!.operations[placed.operation]!;
}

/** End and held slots of an operation, one slot after the other. */
function walk(
  { segments }: WorkloadOperation,
  { open }: WorkloadCentre,
  start: number,
): { end: number; held: number[] } {
  const held: number[] = [];
  let slot = start;
  for (const { slots, mode, holdsPlace } of segments) {
    for (let left = slots; left > 0 && slot < 32 * open.length; slot++) {
      if (mode === 'pauses' && !isSet(open, slot)) continue;
      if (holdsPlace) held.push(slot);
      left--;
    }
  }
  return { end: slot, held };
}

const sharesRun = (operation: WorkloadOperation, centre: WorkloadCentre): boolean =>
  operation.runUnits !== null &&
  centre.runSize !== null &&
  operation.segments.every(({ holdsPlace, mode }) => holdsPlace && mode === 'runs-on');

function placeFaults(
  problem: WorkloadProblem,
  plan: WorkloadPlan,
  placed: PlacedOperation,
  held: readonly number[],
  taken: Map<string, string>,
  name: string,
): string[] {
  if (held.length === 0) return placed.place === null ? [] : [`${name} holds no place and is given one`];
  const operation = operationOf(problem, plan, placed);
  const centre = problem.centres[operation.centre]!;
  const place = centre.places.findIndex(({ key }) => key === placed.place);
  if (place < 0) return [`${name} has no place of its centre`];
  const joined = sharesRun(operation, centre) ? openRunOf(centre, place, placed.startSlot) : undefined;
  if (joined !== undefined) {
    const units = unitsAt(problem, plan, placed);
    return units > joined.freeUnits
      ? [`${name} is in a run with ${units} units, which has room for ${joined.freeUnits}`]
      : [];
  }
  const faults: string[] = [];
  const run = sharesRun(operation, centre) ? `run at ${placed.startSlot}` : name;
  if (sharesRun(operation, centre) && unitsAt(problem, plan, placed) > centre.runSize!) {
    faults.push(`${name} is in a run that is too full`);
  }
  for (const slot of held) {
    const key = `${operation.centre} ${place} ${slot}`;
    const other = taken.get(key);
    if (!isSet(centre.places[place]!.free, slot)) faults.push(`${name} is on a place that is not free at ${slot}`);
    if (other !== undefined && other !== run) faults.push(`${name} and ${other} share a place at ${slot}`);
    taken.set(key, run);
  }
  return faults;
}

const openRunOf = ({ openRuns }: WorkloadCentre, place: number, start: number) =>
  openRuns.find((run) => run.place === place && run.startSlot === start);

/** Units of all operations that share a place and a start with one. */
function unitsAt(
  problem: WorkloadProblem,
  plan: WorkloadPlan,
  { place, startSlot, ...placed }: PlacedOperation,
): number {
  const { centre } = operationOf(problem, plan, { place, startSlot, ...placed });
  return plan.placed
    .filter((other) => other.place === place && other.startSlot === startSlot)
    .map((other) => operationOf(problem, plan, other))
    .filter((operation) => operation.centre === centre)
    .reduce((sum, { runUnits }) => sum + (runUnits ?? 0), 0);
}

function waitFaults(problem: WorkloadProblem, plan: WorkloadPlan): string[] {
  return eachWait(problem, plan).flatMap(({ job, lag, anchor, start }) => {
    if (start < 0) return [];
    if (anchor < 0) return [`operation ${lag.to} of job ${job} starts before what it waits for has a place`];
    const tooEarly = lag.lo !== null && start < lag.lo[anchor]!;
    return tooEarly ? [`operation ${lag.to} of job ${job} does not wait for operation ${lag.from}`] : [];
  });
}

function eachWait(problem: WorkloadProblem, { placed, chosen }: WorkloadPlan) {
  return problem.jobs.flatMap(({ alternatives }, job) =>
    alternatives[chosen[job]!]!.lags.map((lag) => {
      const find = (operation: number) => placed.find((each) => each.job === job && each.operation === operation)!;
      const from = find(lag.from);
      return { job, lag, anchor: lag.anchor === 'end' ? from.endSlot : from.startSlot, start: find(lag.to).startSlot };
    }),
  );
}

/** What a plan is worth, whatever it says of itself. */
export function objectiveOf(problem: WorkloadProblem, plan: WorkloadPlan): WorkloadObjective {
  const { placed, chosen } = plan;
  let violations = 0;
  let disruption = 0;
  for (const each of placed) {
    const { lastSlot, current } = operationOf(problem, plan, each);
    if (each.startSlot < 0) violations += problem.slotCount;
    else violations += Math.max(0, each.startSlot - lastSlot);
    if (chosen[each.job] !== 0 || (current !== null && current.startSlot !== each.startSlot)) disruption++;
  }
  for (const { lag, anchor, start } of eachWait(problem, plan)) {
    if (lag.hi !== null && start >= 0 && anchor >= 0) violations += Math.max(0, start - lag.hi[anchor]!);
  }
  let lateness = 0;
  let inProgress = 0;
  problem.jobs.forEach(({ weight, alternatives }, job) => {
    const own = placed.filter((each) => each.job === job);
    if (own.length === 0) return;
    const last = Math.max(...own.map(({ startSlot, endSlot }) => (startSlot < 0 ? problem.slotCount : endSlot)));
    const starts = own.map(({ startSlot }) => startSlot).filter((slot) => slot >= 0);
    const { dueSlot } = alternatives[chosen[job]!]!;
    if (dueSlot !== null) lateness += weight * Math.max(0, last - dueSlot);
    if (starts.length > 0) inProgress += last - Math.min(...starts);
  });
  return { violations, lateness, disruption, overload: overload(problem, plan), inProgress };
}

function overload(problem: WorkloadProblem, plan: WorkloadPlan): number {
  let sum = 0;
  problem.centres.forEach((centre, number) => {
    const busy = new Set<string>();
    for (const each of plan.placed) {
      const operation = operationOf(problem, plan, each);
      if (operation.centre !== number || each.startSlot < 0) continue;
      for (const slot of walk(operation, centre, each.startSlot).held) busy.add(`${each.place} ${slot}`);
    }
    for (const day of new Set(problem.dayOfSlot)) {
      let [load, open] = [0, 0];
      for (let slot = 0; slot < problem.slotCount; slot++) {
        if (problem.dayOfSlot[slot] !== day || !isSet(centre.open, slot)) continue;
        for (const { key, free } of centre.places) {
          open++;
          if (!isSet(free, slot) || busy.has(`${key} ${slot}`)) load++;
        }
      }
      const over = Math.max(0, Math.floor(load - 0.85 * open + 1e-9));
      sum += over * over;
    }
  });
  return sum;
}
