import type { Best } from './best.js';
import { ChainCache } from './cache.js';
import { requireWork } from './contradictory-work.js';
import { requirePossible } from './errors.js';
import { bucketsOf, cheapestPlans, type Bucket } from './explore.js';
import { frontOf } from './front.js';
import type { ChainOffer, ChainOffers, ChainPlan, ChainProblem, ChainVector, OfferReason } from './model.js';
import { rangeOf } from './monotone.js';
import { objectiveFor, type Axis } from './objective.js';
import { planOf } from './plan.js';
import { prepareChain, type PreparedChain } from './prepare.js';
import { between, wholeRegions, type Region } from './region.js';

/** The questions that an offer may answer, in the order in which they are asked. */
const ORDERS: readonly (readonly Axis[])[] = [
  ['day', 'wishes', 'clinicians', 'clinics'],
  ['wishes', 'day', 'clinicians', 'clinics'],
  ['clinicians', 'day', 'wishes', 'clinics'],
  ['clinics', 'day', 'wishes', 'clinicians'],
];

function valueOf(vector: ChainVector, axis: Axis): number {
  switch (axis) {
    case 'day':
      return vector.deliveryDay;
    case 'wishes':
      return vector.wishesBroken;
    case 'clinicians':
      return vector.clinicianChanges;
    case 'clinics':
      return vector.clinicChanges;
    case 'moved':
      return 0;
  }
}

function least(front: readonly ChainVector[], order: readonly Axis[]): ChainVector {
  return front.reduce((best, vector) => {
    for (const axis of order) {
      const difference = valueOf(vector, axis) - valueOf(best, axis);
      if (difference !== 0) return difference < 0 ? vector : best;
    }
    return best;
  });
}

function equal(a: ChainVector, b: ChainVector): boolean {
  return ORDERS[0]!.every((axis) => valueOf(a, axis) === valueOf(b, axis));
}

function reasonsOf(plan: ChainPlan, front: readonly ChainVector[]): OfferReason[] {
  const { vector } = plan;
  const reasons: OfferReason[] = [];
  const lowest = (axis: Axis): boolean => front.every((other) => valueOf(vector, axis) <= valueOf(other, axis));
  if (lowest('day')) reasons.push({ code: 'earliest-delivery', value: vector.deliveryDay });
  const axes = [
    ['wishes', 'every-visit-as-wished', 'fewest-wishes-broken'],
    ['clinicians', 'same-clinician', 'fewest-clinician-changes'],
    ['clinics', 'one-clinic', 'fewest-clinic-changes'],
  ] as const;
  for (const [axis, none, fewest] of axes) {
    const value = valueOf(vector, axis);
    if (value === 0) reasons.push({ code: none, value });
    else if (lowest(axis)) reasons.push({ code: fewest, value });
  }
  if (!front.some((other) => equal(other, vector))) reasons.push({ code: 'another-choice', value: 0 });
  return reasons;
}

/** Plans of one vector, which leads an order: only its delivery day is searched. */
function* plansWith(
  prepared: PreparedChain,
  whole: readonly Region[],
  vector: ChainVector,
  order: readonly Axis[],
  taken: readonly Bucket[][],
): Generator<Best> {
  const { problem } = prepared;
  const [first, last] = rangeOf(problem.dayOfSlot, vector.deliveryDay);
  const regions = whole.map((region) => between(region, problem.deliveryVisit, first, last));
  yield* cheapestPlans(prepared, regions, objectiveFor(prepared, order), taken);
}

/**
 * The Pareto front of one case and up to `count` different plans, exact for what the problem holds.
 *
 * First comes, for earliest delivery, then fewest wishes broken, fewest clinician changes and fewest clinic changes,
 * the plan that is best in this respect and then in the others, unless an earlier offer has the same four values; each
 * is the best one under the placement rule among those that differ from all earlier offers at two visits or more. The
 * rest are the next best ones by delivery day, wishes, clinician changes and clinic changes that differ as much.
 *
 * @param count offers wanted, at least 0
 * @param cache keeps what later searches can use again
 * @throws {VisitTooLongError} {@link NoClinicianError} {@link LabWithoutCapacityError} {@link ContradictoryWaitsError}
 * {@link ContradictoryWorkError} when the problem as stated can never have a plan; an empty front means that none is left in these weeks
 */
export function planOffers(problem: ChainProblem, count: number, cache = new ChainCache()): ChainOffers {
  const prepared = prepareChain(problem, cache);
  const whole = wholeRegions(prepared);
  const front = frontOf(prepared, whole);
  const offers: ChainOffer[] = [];
  const taken: Bucket[][] = [];
  const accept = (best: Best, plan: ChainPlan): void => {
    offers.push({ ...plan, reasons: reasonsOf(plan, front) });
    taken.push(bucketsOf(prepared, best));
  };
  if (front.length === 0) {
    // What can never have a plan has none now, so only an empty front pays for the proof.
    requirePossible(problem, cache);
    requireWork(problem, cache);
    return { front, offers };
  }
  for (const order of ORDERS) {
    if (offers.length >= count) break;
    const wanted = least(front, order);
    if (offers.some(({ vector }) => equal(vector, wanted))) continue;
    for (const best of plansWith(prepared, whole, wanted, order, taken)) {
      const plan = planOf(prepared, best, cache);
      if (equal(plan.vector, wanted)) accept(best, plan);
      break;
    }
  }
  if (offers.length < count) {
    for (const best of cheapestPlans(prepared, whole, objectiveFor(prepared, ORDERS[0]!), taken)) {
      accept(best, planOf(prepared, best, cache));
      if (offers.length >= count) break;
    }
  }
  return { front, offers };
}
