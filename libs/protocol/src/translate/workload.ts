import type { WorkloadJob, WorkloadProblem } from '@archwright/planner';
import { DomainError } from '@archwright/kernel';
import type { ChainPhase } from '../case-chain.js';
import { PlanningAxis } from './axis.js';
import { timeTaken } from './home-visits.js';
import { LabWorkload, type Around } from './lab-workload.js';
import { toChainProblem, type PlanNames } from './problem.js';
import type { PlanRequest } from './request.js';
import type { WorkCentreSnapshot } from '../snapshot.js';
import { centresOf, toWorkloadCentres } from './workload-centres.js';
import type { CaseWork, MovableStep, WorkloadRequest } from './workload-request.js';

/** What a job of the problem stands for: the work of one case between two visits. */
export interface JobNames {
  readonly work: CaseWork;
  readonly phase: ChainPhase;
  readonly names: PlanNames;
  /** By alternative: the laboratory, and the code of each operation. */
  readonly alternatives: readonly { readonly laboratoryId: string; readonly steps: readonly string[] }[];
}

export interface WorkloadNames {
  readonly request: WorkloadRequest;
  readonly axis: PlanningAxis;
  readonly jobs: readonly JobNames[];
}

/** A slot of lateness costs the same for every case: whose visit matters more is a person's decision. Project default. */
const WEIGHT = 1;

/**
 * Translates the work of many cases into the planner's terms. Visits are fixed, so each stretch of work between two of them
 * is a job of its own with a release and a due slot; waits between its steps are the tables of the case's own problem.
 */
export function toWorkload(request: WorkloadRequest): { problem: WorkloadProblem; names: WorkloadNames } {
  const axis = new PlanningAxis(request.nowMs, request.horizonWeeks);
  const jobs: WorkloadJob[] = [];
  const named: JobNames[] = [];
  for (const work of request.cases) {
    for (const { job, names } of jobsOf(work, request, axis, centresOf(request))) {
      jobs.push(job);
      named.push(names);
    }
  }
  const centres = toWorkloadCentres(request, stayingSteps(request, named), axis);
  const problem = { slotCount: axis.count, dayOfSlot: axis.daysIn(request.zone), centres, jobs };
  return { problem, names: { request, axis, jobs: named } };
}

/** Steps that no job speaks of, as where a laboratory has lost a work centre since. */
function stayingSteps({ cases }: WorkloadRequest, jobs: readonly JobNames[]): MovableStep[] {
  return cases.flatMap((work) => {
    const own = jobs.filter((job) => job.work === work);
    const planned = new Set(own.flatMap(({ alternatives: [here] }) => here?.steps ?? []));
    return work.movable.filter(({ code }) => !planned.has(code));
  });
}

function jobsOf(
  work: CaseWork,
  request: WorkloadRequest,
  axis: PlanningAxis,
  centres: readonly WorkCentreSnapshot[],
): { job: WorkloadJob; names: JobNames }[] {
  const translated = chainProblemOf(planRequestOf(work, request), axis);
  if (translated === null) return [];
  const { problem, names } = translated;
  return problem.phases.flatMap(({ key, labs }) => {
    const phase = work.chain.phases.find(({ code }) => code === key);
    const isToMove = labs[0]?.operations.some((step) => work.movable.some(({ code }) => code === step.key)) === true;
    if (phase === undefined || !isToMove) return [];
    const [after, before] = [aroundOf(work, phase.afterStage, axis), aroundOf(work, phase.beforeStage, axis)];
    if (after === null || before === null) return [];
    // The work itself lies in the first laboratory once its visit has been.
    const own = labs.filter(({ lab }) => lab === request.laboratoryId);
    const others = after.startSlot >= 0 ? labs.filter(({ lab }) => request.otherLaboratoryIds.includes(lab)) : [];
    if (own.length === 0) return [];
    const around = { after, before };
    const alternatives = [...own, ...others].map(
      (lab) => new LabWorkload(work, lab, centres, request.machines, axis, around),
    );
    return [
      {
        job: {
          key: `${work.caseId} ${key}`,
          weight: WEIGHT,
          alternatives: alternatives.map((each) => each.alternative()),
        },
        names: {
          work,
          phase,
          names,
          alternatives: alternatives.map(({ laboratoryId, steps }) => ({ laboratoryId, steps })),
        },
      },
    ];
  });
}

/** Null for a case that can't be planned any more as it stands: its work stays where it is. */
function chainProblemOf(request: PlanRequest, axis: PlanningAxis): ReturnType<typeof toChainProblem> | null {
  try {
    return toChainProblem(request, axis);
  } catch (error) {
    if (error instanceof DomainError) return null;
    throw error;
  }
}

/** Visits stay, so nothing about the patient matters but where they are. */
function planRequestOf(work: CaseWork, request: WorkloadRequest): PlanRequest {
  const { practice, nowMs, horizonWeeks, zone } = request;
  const { chain, progress, fixedStages, fixedSteps, clinicIds } = work;
  return {
    chain,
    progress,
    fixedStages,
    fixedSteps,
    practice,
    patient: {
      id: work.caseId,
      zone,
      busy: [],
      otherVisits: [],
      wishes: { weekdays: [], from: null, to: null },
      unavailableOn: [],
      escort: [],
      wheelchairRoom: false,
      travelMinutes: 0,
      chairMinutesPerDay: null,
      homeTravelMinutes: null,
    },
    wishes: { clinicIds, clinicianId: null, laboratoryIds: practice.laboratories.map(({ id }) => id) },
    nowMs,
    notBeforeMs: null,
    horizonWeeks,
    rush: false,
    lagOverrides: {},
    ignoreUnavailable: true,
  };
}

function aroundOf({ fixedStages }: CaseWork, stage: string, axis: PlanningAxis): Around | null {
  const visit = fixedStages.find(({ code }) => code === stage);
  if (visit === undefined) return null;
  const { startMs, endMs } = timeTaken(visit);
  return { startSlot: axis.slotUntil(startMs), endSlot: axis.slotFrom(endMs), clinicId: visit.clinicId };
}
