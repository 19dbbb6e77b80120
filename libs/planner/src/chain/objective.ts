import type { ChainProblem } from './model.js';
import type { PreparedChain } from './prepare.js';

export type Axis = 'moved' | 'day' | 'wishes' | 'clinicians' | 'clinics';

/** Weights that pack a lexicographic order into one exact double. */
export interface Objective {
  readonly order: readonly Axis[];
  readonly weights: Readonly<Record<Axis | 'buffer' | 'placement' | 'start', number>>;
  /** Subtracted from the delivery day. */
  readonly firstDay: number;
  /** Start slot and clinic that a visit has now; `null` when it has none. Any other counts as moved. */
  readonly current: readonly ({ readonly startSlot: number; readonly clinic: string } | null)[];
}

/**
 * The axes in the given order, then buffer, placement cost and the sum of starts. Where all of it needs more than 53 bits,
 * as for a dozen visits over most of a year, placement cost is left out of the order.
 */
export function objectiveFor(
  prepared: PreparedChain,
  order: readonly Axis[],
  current: Objective['current'] = prepared.states.map(() => null),
): Objective {
  const { problem, states } = prepared;
  const firstDay = problem.dayOfSlot[0]!;
  const costing = states.filter((list) => list.some(({ placementCost }) => placementCost !== null)).length;
  const weights = weightsFor(problem, order, costing * problem.placement.mostCost) ?? weightsFor(problem, order, 0);
  if (weights === null) {
    const { slotCount, visits } = problem;
    throw new Error(
      `The axes of ${String(visits.length)} visits over ${String(slotCount)} slots need more than 53 bits`,
    );
  }
  return { order, weights, firstDay, current };
}

/** `null` when no exact number holds them. */
function weightsFor(
  { slotCount, visits: { length: count }, dayOfSlot, placement: { bufferSteps } }: ChainProblem,
  order: readonly Axis[],
  placement: number,
): Objective['weights'] | null {
  const largest = {
    moved: count,
    day: dayOfSlot[slotCount - 1]! - dayOfSlot[0]!,
    wishes: count,
    clinicians: count,
    clinics: count,
    buffer: bufferSteps.length * count,
    start: slotCount * count,
  };
  const weights = { moved: 0, day: 0, wishes: 0, clinicians: 0, clinics: 0, buffer: 0, placement: 0, start: 1 };
  let weight = largest.start + 1;
  if (placement > 0) {
    weights.placement = weight;
    weight *= placement + 1;
  }
  for (const axis of [...order, 'buffer' as const].reverse()) {
    weights[axis] = weight;
    weight *= largest[axis] + 1;
  }
  return weight > Number.MAX_SAFE_INTEGER ? null : weights;
}
