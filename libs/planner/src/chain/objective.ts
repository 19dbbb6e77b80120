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

/** The axes in the given order, then buffer, placement cost and the sum of starts. */
export function objectiveFor(
  prepared: PreparedChain,
  order: readonly Axis[],
  current: Objective['current'] = prepared.states.map(() => null),
): Objective {
  const { problem, states } = prepared;
  const count = problem.visits.length;
  const firstDay = problem.dayOfSlot[0]!;
  let placement = 0;
  for (const list of states) {
    placement += list.reduce((most, { placementCost }) => Math.max(most, placementCost === null ? 0 : 255), 0);
  }
  const largest = {
    moved: count,
    day: problem.dayOfSlot[problem.slotCount - 1]! - firstDay,
    wishes: count,
    clinicians: count,
    clinics: count,
    buffer: problem.placement.bufferSteps.length * count,
    placement,
    start: problem.slotCount * count,
  };
  const weights = { moved: 0, day: 0, wishes: 0, clinicians: 0, clinics: 0, buffer: 0, placement: 0, start: 1 };
  let weight = 1;
  for (const axis of [...order, 'buffer' as const, 'placement' as const, 'start' as const].reverse()) {
    weights[axis] = weight;
    weight *= largest[axis] + 1;
  }
  if (weight > Number.MAX_SAFE_INTEGER) {
    throw new Error(
      `The axes of ${String(count)} visits over ${String(problem.slotCount)} slots need more than 53 bits`,
    );
  }
  return { order, weights, firstDay, current };
}
