import { givenUp, planned, type Draft, type JointPlanner } from './draft.js';
import { Ejection, overlap } from './ejection.js';
import { timeOf } from './held-time.js';
import { REACHES, type CaseChange, type Reach } from './joint-case.js';
import { costOf } from './joint-cost.js';
import { changeFor } from './least-change.js';
import { searchNeighbourhood } from './neighbourhood.js';
import type { MovedPlan, ReplanAim } from './replan-chain.js';

/** How far a repair had to reach, the mildest first. */
export type Rung = Reach | 'others-make-room' | 'planned-together';

/** New plans of every case that changes, and what they cost. */
export interface JointPlan {
  readonly rung: Rung;
  readonly changes: ReadonlyMap<string, CaseChange>;
  readonly movedVisits: number;
  /** No plan of the cases that have one here moves fewer visits while all other visits stay, whatever laboratory work makes room. */
  readonly leastMovedVisits: number;
  /** Broken cases that no plan was found for. */
  readonly unplanned: readonly Unplanned[];
}

export interface Unplanned {
  readonly key: string;
  /** There is none even if everybody else made room. */
  readonly isImpossible: boolean;
  /** Cases that hold what its best plan would need, whether they take part or not. */
  readonly inTheWay: readonly string[];
}

/** A repair is replayed by these. */
export interface LadderSettings {
  readonly seed: number;
  readonly rounds: number;
}

/**
 * Repairs all broken cases together and goes no further than it must: each by its own mildest change; other cases make
 * room; the broken ones are planned again beside each other in other orders. Whoever has to move nothing moves nothing.
 *
 * Exact for a single broken case as long as nobody else makes room; from there on it searches, and the bound says how far
 * off the plan can be.
 */
export function climb(planner: JointPlanner, settings: LadderSettings): JointPlan {
  const { question } = planner;
  const bounds = new Bounds(planner);
  const alone = question.broken.reduce<Draft>((draft, { key }) => {
    const change = planner.change(key, draft);
    return change === null ? draft : planned(draft, key, change);
  }, planner.start());
  const roomy = question.broken.reduce<Draft>((draft, { key }) => {
    if (draft.changes.has(key)) return draft;
    return new Ejection(planner).makeRoom(key, givenUp(draft, [key])) ?? draft;
  }, alone);
  const together = searchNeighbourhood(planner, roomy, settings, (key) => bounds.of(key));
  return planOf(planner, together, bounds, together === roomy ? null : 'planned-together');
}

/** Lower bounds on the moved visits of each case, found when they are first needed. */
class Bounds {
  private readonly known = new Map<string, number | null>();

  constructor(private readonly planner: JointPlanner) {}

  /** `null` when the case has no plan though all laboratory work makes room. */
  of(key: string): number | null {
    let least = this.known.get(key);
    if (least === undefined) {
      least = this.planner.leastMoved(key);
      this.known.set(key, least);
    }
    return least;
  }

  /** Sum over the broken cases that have a plan. Who moves nothing needs no bound. */
  total({ changes }: Draft): number {
    return this.planner.question.broken.reduce((sum, { key }) => {
      const change = changes.get(key);
      return change === undefined || change.plan.movedVisits === 0 ? sum : sum + (this.of(key) ?? 0);
    }, 0);
  }
}

function planOf(planner: JointPlanner, draft: Draft, bounds: Bounds, rung: Rung | null): JointPlan {
  const { question } = planner;
  const { changes } = draft;
  const othersMoved = question.neighbours.some(({ key }) => changes.has(key));
  return {
    rung: rung ?? (othersMoved ? 'others-make-room' : furthest(changes)),
    changes,
    movedVisits: costOf(draft, question)[1],
    leastMovedVisits: bounds.total(draft),
    unplanned: question.broken
      .filter(({ key }) => !changes.has(key))
      .map(({ key }) => ({ key, isImpossible: !planner.isPossible(key), inTheWay: inTheWayOf(key, planner, draft) })),
  };
}

function furthest(changes: JointPlan['changes']): Reach {
  const reached = [...changes.values()].map(({ reach }) => REACHES.indexOf(reach));
  return REACHES[Math.max(0, ...reached)] ?? 'kept';
}

/** Cases in the way of the plan that a case would have beside the other broken ones alone, or else beside nobody. */
function inTheWayOf(key: string, planner: JointPlanner, { held }: Draft): string[] {
  const { question } = planner;
  const broken = question.broken.flatMap((each) => (each.key === key ? [] : (held.get(each.key) ?? [])));
  const wish = planner.changeBeside(key, broken) ?? planner.changeBeside(key, []);
  if (wish === null) return [];
  const wanted = timeOf(wish.plan);
  const holding = new Map([...question.held, ...held]);
  return [...holding].filter(([other, time]) => other !== key && overlap(wanted, time)).map(([other]) => other);
}

/** For another aim: every broken case as that aim wants it, the most urgent first, while nobody else makes room. */
export function planEach(planner: JointPlanner, aim: ReplanAim): ReadonlyMap<string, MovedPlan> | null {
  let draft = planner.start();
  for (const { key } of planner.question.broken) {
    const plan = changeFor(aim, planner.caseOf(key), planner.problemBeside(key, draft), planner.cache);
    if (plan === null) return null;
    draft = planned(draft, key, { plan, reach: 'visits-moved' });
  }
  return new Map([...draft.changes].map(([key, { plan }]) => [key, plan]));
}
