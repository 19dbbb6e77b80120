import {
  JointPlanner,
  climb,
  planEach,
  undominated,
  type ChainPlan,
  type CurrentOperation,
  type JointCase,
  type MovedPlan,
  type ReplanAim,
  type Rung,
} from '@archwright/planner';
import { fromChainPlan, type PlanNames } from '@archwright/protocol';
import { toHeldTime } from '../planning/joint-problem.js';
import { currentOf, withKept, withPresentFirst, type ReplanSearch } from '../planning/replan-search.js';
import type { FoundPlan } from '../planning/search.js';
import type { ResourceTimes } from '../planning/snapshot-changes.js';
import { Translation } from '../planning/translation.js';

/** The same question gives the same plan: how far the search goes is counted, never timed. Project defaults. */
const SETTINGS = { seed: 1, rounds: 12 };

export type CaseToRepair = { readonly caseId: string } & Pick<ReplanSearch, 'request' | 'booked' | 'plannedSteps'>;

/** Cases to plan anew together, all over the same weeks. */
export interface RepairSearch {
  readonly broken: readonly CaseToRepair[];
  /** Cases that may be asked to make room. */
  readonly neighbours: readonly CaseToRepair[];
  /** What every case holds that could move. */
  readonly held: ReadonlyMap<string, ResourceTimes>;
}

export interface JointRepair {
  /** What it is the least in. */
  readonly aim: ReplanAim;
  readonly rung: Rung;
  readonly parts: readonly { readonly caseId: string; readonly found: FoundPlan; readonly movedVisits: number }[];
  readonly movedVisits: number;
  readonly leastMovedVisits: number;
}

export interface RepairsFound {
  /** None is worse than another in every way; the one with the fewest moves first. Cases in which nothing changes have no part. */
  readonly repairs: readonly JointRepair[];
  /** Broken cases without a plan. */
  readonly left: readonly {
    readonly caseId: string;
    readonly isImpossible: boolean;
    readonly inTheWay: readonly string[];
  }[];
}

/** Repairs all broken cases together: with the fewest moves, and in up to two other ways where visits have to move. */
export function searchRepair({ broken, neighbours, held }: RepairSearch): RepairsFound {
  const [first] = broken;
  if (first === undefined) return { repairs: [], left: [] };
  const translation = new Translation(first.request);
  const stated = new Map([...broken, ...neighbours].map((each) => [each.caseId, stateCase(each, translation)]));
  const jointOf = ({ caseId }: CaseToRepair): JointCase => statedOf(stated, caseId).joint;
  const { axis } = statedOf(stated, first.caseId).names;
  const planner = new JointPlanner(
    {
      broken: broken.map(jointOf),
      neighbours: neighbours.map(jointOf),
      held: new Map([...held].map(([id, times]) => [id, toHeldTime(times, axis)])),
    },
    translation.cache,
  );
  const plan = climb(planner, SETTINGS);
  const least = plan.leastMovedVisits;
  const ways: Way[] = [
    { aim: 'fewest-moves', rung: plan.rung, plans: new Map([...plan.changes].map(([id, each]) => [id, each.plan])) },
  ];
  if (plan.unplanned.length === 0 && plan.movedVisits > 0) {
    for (const aim of ['earliest', 'as-wished'] as const) {
      const plans = planEach(planner, aim);
      if (plans !== null) ways.push({ aim, rung: 'visits-moved', plans });
    }
  }
  return {
    repairs: undominated(ways, costsOf).map((way) => toRepair(way, stated, least)),
    left: plan.unplanned.map(({ key, ...why }) => ({ caseId: key, ...why })),
  };
}

interface Way {
  readonly aim: ReplanAim;
  readonly rung: Rung;
  readonly plans: ReadonlyMap<string, MovedPlan>;
}

function costsOf({ plans }: Way): number[] {
  const sum = (of: (plan: MovedPlan) => number): number => [...plans.values()].reduce((all, plan) => all + of(plan), 0);
  return [
    sum(({ movedVisits }) => movedVisits),
    sum(({ vector }) => vector.deliveryDay),
    sum(({ vector }) => vector.wishesBroken),
  ];
}

/** A case in the planner's terms. */
export interface StatedCase {
  readonly given: CaseToRepair;
  readonly joint: JointCase;
  readonly names: PlanNames;
}

function statedOf(stated: ReadonlyMap<string, StatedCase>, caseId: string): StatedCase {
  const found = stated.get(caseId);
  if (found === undefined) throw new Error(`Case ${caseId} was not stated`);
  return found;
}

export function stateCase(given: CaseToRepair, translation: Translation): StatedCase {
  const { caseId, request, booked, plannedSteps } = given;
  const { problem, names } = translation.of(request);
  const operations = plannedSteps.map(({ code, laboratoryId, placeId, startMs }): CurrentOperation => ({
    operation: code,
    lab: laboratoryId,
    startSlot: names.axis.slotUntil(startMs),
    place: placeId,
  }));
  const visits = currentOf(problem, names, booked);
  return { given, names, joint: { key: caseId, problem: withPresentFirst(problem, booked), visits, operations } };
}

function toRepair({ aim, rung, plans }: Way, stated: ReadonlyMap<string, StatedCase>, least: number): JointRepair {
  const parts = [...plans].flatMap(([caseId, plan]) => {
    const { given, names } = statedOf(stated, caseId);
    const found = toFound(plan, given, names);
    const { visits, labSteps } = found.plan;
    const isChanged = [...visits, ...labSteps].some(({ isKept }) => !isKept);
    return isChanged ? [{ caseId, found, movedVisits: plan.movedVisits }] : [];
  });
  const movedVisits = parts.reduce((sum, part) => sum + part.movedVisits, 0);
  return { aim, rung, parts, movedVisits, leastMovedVisits: least };
}

export function toFound(plan: ChainPlan, { booked, plannedSteps }: CaseToRepair, names: PlanNames): FoundPlan {
  return {
    plan: withKept(fromChainPlan({ ...plan, reasons: [] }, names), booked, plannedSteps),
    objective: { vector: plan.vector, ties: plan.ties },
  };
}
