import { within } from '../chain/bits.js';
import { ChainCache } from '../chain/cache.js';
import type { ChainProblem } from '../chain/model.js';
import type { SlotRange } from './held-time.js';
import { replanChain, type CurrentVisit, type MovedPlan } from './replan-chain.js';

/** Time that has become free: a person's, in one clinic. */
export interface FreedTime extends SlotRange {
  readonly clinic: string;
  readonly clinician: string;
}

/** A plan that uses freed time for one visit. */
export interface PulledForward {
  /** Index of the visit that lies within the freed time. */
  readonly visit: number;
  readonly plan: MovedPlan;
}

/**
 * The best plan in which a visit that is later now, or has no time yet, lies within freed time: earliest delivery, then
 * fewest moved visits, then the earliest such visit of the chain. Exact.
 *
 * @param current one entry per visit; `null` for a visit without a booking, which costs nothing to place. The problem's
 * resources have to be free where the case's own bookings are.
 * @returns `null` when no visit of the case can use the time
 */
export function pullForward(
  problem: ChainProblem,
  current: readonly (CurrentVisit | null)[],
  freed: FreedTime,
  cache = new ChainCache(),
): PulledForward | null {
  let best: PulledForward | null = null;
  problem.visits.forEach((_, visit) => {
    const now = current[visit] ?? null;
    if (now !== null && now.startSlot <= freed.startSlot) return;
    const [plan] = replanChain(inFreedTime(problem, visit, freed), current, 'earliest', 1, cache);
    if (plan !== undefined && (best === null || isBetter(plan, best.plan))) best = { visit, plan };
  });
  return best;
}

function isBetter(one: MovedPlan, other: MovedPlan): boolean {
  const days = one.vector.deliveryDay - other.vector.deliveryDay;
  return days === 0 ? one.movedVisits < other.movedVisits : days < 0;
}

function inFreedTime(problem: ChainProblem, only: number, { clinic, clinician, startSlot, endSlot }: FreedTime) {
  return {
    ...problem,
    visits: problem.visits.map((visit, index) =>
      index !== only
        ? visit
        : {
            ...visit,
            options: visit.options
              .filter((option) => option.clinic === clinic && !option.refused)
              .map((option) => ({
                ...option,
                clinicians: option.clinicians.filter(({ key }) => key === clinician),
                allowed: within(option.allowed, Math.max(0, startSlot), endSlot - option.lengthSlots),
              })),
          },
    ),
  };
}
