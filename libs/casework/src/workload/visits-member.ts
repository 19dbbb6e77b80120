import { DomainError } from '@archwright/kernel';
import {
  JointPlanner,
  VisitLevelling,
  WorkloadSearch,
  compareLevels,
  type CaseStanding,
  type LevelObjective,
  type WorkloadAim,
  type WorkloadBound,
  type WorkloadPlan,
} from '@archwright/planner';
import { toWorkload, type CasePlan, type WorkloadRequest } from '@archwright/protocol';
import { stateCase, toFound, type CaseToRepair, type StatedCase } from '../disturbances/search-repair.js';
import { toHeldTime } from '../planning/joint-problem.js';
import type { FoundPlan } from '../planning/search.js';
import { Translation } from '../planning/translation.js';
import { standingIn, type StatedWorkload } from './plan-standing.js';
import type { PlanStanding } from './search-workload.js';
import type { VisitsQuestion } from './visits-question.js';

/** What a thread of the search is told: the question, and which of its streams are this thread's. */
export interface VisitsShare {
  readonly question: VisitsQuestion;
  readonly aim: WorkloadAim;
  readonly seed: number;
  readonly own: readonly number[];
}

/** How far a thread's streams have come. */
export interface VisitsState {
  readonly isDone: boolean;
  readonly objective: LevelObjective;
  /** The first that has the objective. */
  readonly stream: number;
}

/** A case that changes, with its complete new plan. */
export interface VisitsPart {
  readonly caseId: string;
  readonly found: FoundPlan;
  readonly movedVisits: number;
}

export interface VisitsConcluded {
  readonly inForce: PlanStanding;
  readonly after: PlanStanding;
  readonly parts: readonly VisitsPart[];
  /** Slots of lateness that no choice of the free visits avoids: of cases without one, were the benches empty. */
  readonly sureLateness: number;
}

/** The streams of one thread; each searches by itself. */
export class VisitsMember {
  private readonly before: Judged;
  private readonly stated: ReadonlyMap<string, StatedCase>;
  private readonly streams: readonly { readonly number: number; readonly search: VisitLevelling }[];

  constructor(private readonly share: VisitsShare) {
    const { question, aim, seed, own } = share;
    const { request, practice, held } = question;
    this.before = judge(request);
    const { axis } = this.before.stated.names;
    const [first] = question.cases;
    if (first === undefined) throw new Error('a question about visits has cases');
    const translation = new Translation(first.request);
    this.stated = new Map(question.cases.flatMap((each) => statedCase(each, translation)));
    const planner = new JointPlanner(
      {
        broken: [...this.stated.values()].map(({ joint }) => joint),
        neighbours: [],
        held: new Map([...held].map(([id, times]) => [id, toHeldTime(times, axis)])),
      },
      translation.cache,
    );
    // Places that no case holds any time of, which is what the cases of the question are set beside.
    const { centres, dayOfSlot } = toWorkload({ ...request, practice, cases: [] }).problem;
    const present = presentOf(this.before, [...this.stated.keys()]);
    this.streams = own.map((number) => ({
      number,
      search: new VisitLevelling({ planner, centres, dayOfSlot, present }, { seed, stream: number, aim }),
    }));
  }

  /** Another round of each stream. */
  advance(): VisitsState {
    for (const { search } of this.streams) if (!search.isDone) search.runRound();
    return this.state;
  }

  get state(): VisitsState {
    const { number, search } = this.best();
    return {
      isDone: this.streams.every((each) => each.search.isDone),
      objective: search.best.objective,
      stream: number,
    };
  }

  /** The best plan, and how everything stands with it by the judge of the workload. */
  conclude(): VisitsConcluded {
    const { request, cases } = this.share.question;
    const parts = [...this.best().search.best.changes].flatMap(([caseId, { plan }]): VisitsPart[] => {
      const { given, names } = this.stated.get(caseId) ?? {};
      if (given === undefined || names === undefined) throw new Error(`Case ${caseId} was not stated`);
      const found = toFound(plan, given, names);
      const { visits, labSteps } = found.plan;
      const isChanged = [...visits, ...labSteps].some(({ isKept }) => !isKept);
      return isChanged ? [{ caseId, found, movedVisits: plan.movedVisits }] : [];
    });
    const after = judge(withPlans(request, new Map(parts.map(({ caseId, found }) => [caseId, found.plan]))));
    const free = new Set(cases.filter(({ booked }) => booked.length > 0).map(({ caseId }) => caseId));
    const { jobs } = this.before.stated.names;
    return {
      inForce: standingOf(this.before),
      after: standingOf(after),
      parts,
      sureLateness: jobs.reduce(
        (sum, { work }, job) => sum + (free.has(work.caseId) ? 0 : (this.before.bound.ofJob[job] ?? 0)),
        0,
      ),
    };
  }

  private best(): { readonly number: number; readonly search: VisitLevelling } {
    return this.streams.reduce((best, each) => {
      const order = compareLevels(each.search.best.objective, best.search.best.objective, this.share.aim);
      return order < 0 ? each : best;
    });
  }
}

/** A case that can't be planned any more as it stands keeps what it holds. */
function statedCase(given: CaseToRepair, translation: Translation): [string, StatedCase][] {
  try {
    return [[given.caseId, stateCase(given, translation)]];
  } catch (error) {
    if (error instanceof DomainError) return [];
    throw error;
  }
}

interface Judged {
  readonly stated: StatedWorkload;
  readonly plan: WorkloadPlan;
  readonly bound: WorkloadBound;
}

/** Work as it is planned, judged as every other proposal's. */
function judge(request: WorkloadRequest): Judged {
  const stated = toWorkload(request);
  const search = new WorkloadSearch(stated.problem, { seed: 1, streams: 1, aim: 'fewest-moves' }, []);
  return { stated, plan: search.inForce, bound: search.bound };
}

const standingOf = ({ stated, plan, bound }: Judged): PlanStanding => standingIn(stated, plan, bound);

function presentOf({ stated, plan, bound }: Judged, caseIds: readonly string[]): Map<string, CaseStanding> {
  const { jobs, axis } = stated.names;
  const { outlook } = standingIn(stated, plan, bound);
  const spanOf = (job: number): number => {
    const placed = plan.placed.filter((each) => each.job === job && each.startSlot >= 0);
    if (placed.length === 0) return 0;
    return Math.max(...placed.map(({ endSlot }) => endSlot)) - Math.min(...placed.map(({ startSlot }) => startSlot));
  };
  return new Map(
    caseIds.map((caseId) => [
      caseId,
      {
        lateness: outlook
          .filter((each) => each.caseId === caseId)
          .reduce((sum, { lateMinutes }) => sum + lateMinutes / axis.slotMinutes, 0),
        inProgress: jobs.reduce((sum, { work }, job) => sum + (work.caseId === caseId ? spanOf(job) : 0), 0),
      },
    ]),
  );
}

/** The work as it would be planned once these plans are booked. */
function withPlans(request: WorkloadRequest, plans: ReadonlyMap<string, CasePlan>): WorkloadRequest {
  return {
    ...request,
    cases: request.cases.map((work) => {
      const plan = plans.get(work.caseId);
      if (plan === undefined) return work;
      return {
        ...work,
        fixedStages: work.fixedStages.map((stage) => {
          const visit = plan.visits.find((each) => each.stage === stage.code && !each.isKept);
          if (visit === undefined) return stage;
          const { startMs, endMs, clinicId, clinicianId, chairId, homeTravelMinutes } = visit;
          return { ...stage, startMs, endMs, clinicId, clinicianId, chairId, homeTravelMinutes };
        }),
        movable: work.movable.map((step) => {
          const moved = plan.labSteps.find((each) => each.code === step.code && !each.isKept);
          if (moved === undefined) return step;
          const { startMs, placeId, batchId, arches, holds } = moved;
          const run = batchId === null ? null : { id: batchId, units: arches.length };
          const taken = placeId === null ? [] : holds.map((held) => ({ ...held, placeId }));
          return { ...step, startMs, placeId, holds: taken, run };
        }),
      };
    }),
  };
}
