import type { PlacedOperation, WorkloadPlan, WorkloadProblem } from '@archwright/planner';
import type { CasePlanLabStep, CasePlanTransport } from './plan.js';
import type { JobNames, WorkloadNames } from './workload.js';

/** A stretch of work whose steps do not all stay where they are. */
export interface MovedWork {
  readonly caseId: string;
  readonly phase: string;
  /** In another laboratory than now. */
  readonly isElsewhere: boolean;
  /** Those that leave their time, place or laboratory. Steps of one machine, place and start share a run. */
  readonly steps: readonly (CasePlanLabStep & { readonly sharesRun: boolean })[];
  /** The way home, and the way out where it changes. */
  readonly transports: readonly CasePlanTransport[];
}

/** The steps of a plan that do not stay, by stretch of work. Work without room on the axis is left out: it has no time. */
export function movedWork(plan: WorkloadPlan, problem: WorkloadProblem, names: WorkloadNames): MovedWork[] {
  return names.jobs.flatMap((job, number): MovedWork[] => {
    const chosen = plan.chosen[number] ?? 0;
    const placed = plan.placed.filter((each) => each.job === number);
    const steps = placed.flatMap((each) => movedStep(each, chosen, job, problem, names) ?? []);
    if (steps.length === 0) return [];
    const doneMs = names.axis.msOf(Math.max(...placed.map(({ endSlot }) => endSlot)));
    const laboratoryId = job.alternatives[chosen]?.laboratoryId ?? '';
    return [
      {
        caseId: job.work.caseId,
        phase: job.phase.code,
        isElsewhere: chosen !== 0,
        steps,
        transports: transportsOf(job, laboratoryId, chosen !== 0, doneMs),
      },
    ];
  });
}

function movedStep(
  { job: number, operation: at, startSlot, endSlot, place, holds }: PlacedOperation,
  chosen: number,
  { work, alternatives, names: { remaining } }: JobNames,
  problem: WorkloadProblem,
  { axis }: WorkloadNames,
): MovedWork['steps'][number] | null {
  const operation = problem.jobs[number]?.alternatives[chosen]?.operations[at];
  const now = work.movable.find(({ code }) => code === operation?.key);
  const found = remaining.phases.flatMap(({ steps }) => steps).find(({ step }) => step.code === operation?.key);
  if (operation === undefined || now === undefined || found === undefined || startSlot < 0) return null;
  const startMs = axis.msOf(startSlot);
  if (chosen === 0 && now.startMs === startMs && now.placeId === place) return null;
  const { step, row } = found;
  return {
    code: step.code,
    round: row.round,
    title: step.title,
    arches: row.arches,
    afterStage: step.afterStage,
    beforeStage: step.beforeStage,
    laboratoryId: alternatives[chosen]?.laboratoryId ?? '',
    workCentreId: problem.centres[operation.centre]?.key ?? '',
    workCentre: step.workCentre,
    placeId: place,
    batchId: null,
    startMs,
    endMs: axis.msOf(endSlot),
    holds: holds.map((held) => ({ startMs: axis.msOf(held.startSlot), endMs: axis.msOf(held.endSlot) })),
    isKept: false,
    sharesRun: operation.runUnits !== null,
  };
}

/** Home at once after the last step; out anew only to another laboratory. */
function transportsOf(
  { work, phase, names }: JobNames,
  laboratoryId: string,
  isElsewhere: boolean,
  doneMs: number,
): CasePlanTransport[] {
  const laboratory = names.request.practice.laboratories.find(({ id }) => id === laboratoryId);
  const visitOf = (stage: string) => work.fixedStages.find(({ code }) => code === stage);
  const [after, before] = [visitOf(phase.afterStage), visitOf(phase.beforeStage)];
  if (laboratory === undefined || after === undefined || before === undefined) return [];
  const home = names.transport.first('to-clinic', before.clinicId, laboratory, doneMs);
  const goesOut = isElsewhere && phase.outward === 'courier';
  const out = goesOut ? names.transport.first('to-lab', after.clinicId, laboratory, after.endMs) : null;
  const way = { phase: phase.code, laboratoryId };
  return [
    ...(out === null ? [] : [{ ...way, direction: 'to-lab' as const, clinicId: after.clinicId, ...out }]),
    ...(home === null ? [] : [{ ...way, direction: 'to-clinic' as const, clinicId: before.clinicId, ...home }]),
  ];
}
