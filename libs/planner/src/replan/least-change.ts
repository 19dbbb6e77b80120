import { hasBit } from '../chain/bits.js';
import type { ChainCache } from '../chain/cache.js';
import type { ChainProblem } from '../chain/model.js';
import { anyFree, roomFor } from '../chain/room.js';
import type { CaseChange, CurrentOperation, JointCase } from './joint-case.js';
import { onlyLater, pinOperations, pinVisits } from './pin.js';
import { replanChain, type CurrentVisit, type MovedPlan, type ReplanAim } from './replan-chain.js';

/**
 * The mildest change of one case that gives it a complete plan: everything stays in time; laboratory work uses up its
 * slack; laboratory work is put in another order between visits that stay; then the fewest visits move, with as much
 * laboratory work in its place as that allows. Exact in whether visits must move and in how many.
 *
 * @param problem the case's own, with what others hold taken out
 * @param mostMoved a plan that moves more visits is none
 */
export function leastChange(
  joint: JointCase,
  problem: ChainProblem,
  cache: ChainCache,
  mostMoved = Infinity,
): CaseChange | null {
  const kept = changeOfWork(joint, problem, cache);
  if (kept !== null) return kept;
  const [free] = replanChain(problem, joint.visits, 'fewest-moves', 1, cache);
  if (free === undefined || free.movedVisits > mostMoved) return null;
  return { plan: withWorkKept(free, 'fewest-moves', joint, problem, cache), reach: 'visits-moved' };
}

/** The mildest change that leaves every visit at its time; `null` when there is none. */
function changeOfWork({ visits, operations }: JointCase, problem: ChainProblem, cache: ChainCache): CaseChange | null {
  if (!visits.every((now, index) => now === null || hasRoom(problem, index, now, cache))) return null;
  const still = pinVisits(problem, visits);
  const best = (stated: ChainProblem): MovedPlan | undefined =>
    replanChain(stated, visits, 'fewest-moves', 1, cache)[0];
  const kept = best(pinOperations(still, operations));
  if (kept !== undefined) return { plan: kept, reach: 'kept' };
  if (operations.length > 0) {
    const later = best(onlyLater(still, operations));
    if (later !== undefined) return { plan: later, reach: 'absorbed' };
  }
  const between = best(still);
  return between === undefined ? null : { plan: between, reach: 'resequenced' };
}

/** Whether people and rooms are free for a visit where it is booked: seen at a glance, and mostly what has fallen away. */
function hasRoom(
  { visits, slotCount }: ChainProblem,
  index: number,
  { startSlot, clinic }: CurrentVisit,
  cache: ChainCache,
): boolean {
  return visits[index]!.options.some(
    (option) =>
      option.clinic === clinic &&
      hasBit(option.allowed, startSlot) &&
      hasBit(roomFor(option, slotCount, cache), startSlot) &&
      hasBit(anyFree(option.clinicians, option.lengthSlots, slotCount, cache), startSlot),
  );
}

/**
 * The best plan of one case for an aim, with as much laboratory work in its place as costs nothing that the aim counts:
 * all of it, else what lies between visits that stay.
 */
export function changeFor(
  aim: ReplanAim,
  { visits, operations }: Pick<JointCase, 'visits' | 'operations'>,
  problem: ChainProblem,
  cache: ChainCache,
): MovedPlan | null {
  const [free] = replanChain(problem, visits, aim, 1, cache);
  return free === undefined ? null : withWorkKept(free, aim, { visits, operations }, problem, cache);
}

/** A plan as good as the best one, with as much laboratory work in its place as there is one of. */
function withWorkKept(
  free: MovedPlan,
  aim: ReplanAim,
  { visits, operations }: Pick<JointCase, 'visits' | 'operations'>,
  problem: ChainProblem,
  cache: ChainCache,
): MovedPlan {
  const between = operations.filter((operation) => isBetweenStaying(operation, problem, visits, free));
  for (const kept of [operations, between]) {
    if (kept.length === 0) continue;
    const [found] = replanChain(pinOperations(problem, kept), visits, aim, 1, cache);
    if (found !== undefined && isAsGood(found, free, aim)) return found;
  }
  return free;
}

function isBetweenStaying(
  { operation }: CurrentOperation,
  problem: ChainProblem,
  visits: JointCase['visits'],
  plan: MovedPlan,
): boolean {
  const phase = problem.phases.find(({ labs }) =>
    labs.some(({ operations }) => operations.some(({ key }) => key === operation)),
  );
  const stays = (visit: number | null): boolean =>
    visit === null || visits[visit]?.startSlot === plan.visits[visit]?.startSlot;
  return phase !== undefined && stays(phase.after) && stays(phase.before);
}

/** Laboratory work that stays is worth a later delivery when few moves are asked for, and nothing else. */
function isAsGood(one: MovedPlan, other: MovedPlan, aim: ReplanAim): boolean {
  if (one.movedVisits !== other.movedVisits) return false;
  const isSame =
    one.vector.deliveryDay === other.vector.deliveryDay && one.vector.wishesBroken === other.vector.wishesBroken;
  return aim === 'fewest-moves' || isSame;
}
