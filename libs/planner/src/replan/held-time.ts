import type { ChainCache } from '../chain/cache.js';
import type { ChainPlan, ChainProblem, ChainResource, SlotBits } from '../chain/model.js';

/** Slots, half-open. */
export interface SlotRange {
  readonly startSlot: number;
  readonly endSlot: number;
}

/** What a plan takes of each resource, by the resource's key. */
export type HeldTime = ReadonlyMap<string, readonly SlotRange[]>;

/** Everything that a plan takes: chairs, people, kits until they are ready again, and bench places; a batch that is joined is taken already. */
export function timeOf({ visits, operations }: Pick<ChainPlan, 'visits' | 'operations'>): HeldTime {
  const held = new Map<string, SlotRange[]>();
  const take = (key: string | null, range: SlotRange): void => {
    if (key === null || key === '') return;
    const known = held.get(key);
    if (known === undefined) held.set(key, [range]);
    else known.push(range);
  };
  for (const { startSlot, endSlot, chair, clinician, assistant, kits } of visits) {
    for (const key of [chair, clinician, assistant]) take(key, { startSlot, endSlot });
    for (const { unit, readySlot } of kits) take(unit, { startSlot, endSlot: readySlot });
  }
  for (const { place, holds } of operations) for (const range of holds) take(place, range);
  return held;
}

/** All of it together. */
export function joinedTime(held: Iterable<HeldTime>): HeldTime {
  const joined = new Map<string, SlotRange[]>();
  for (const each of held) {
    for (const [key, taken] of each) {
      const known = joined.get(key);
      if (known === undefined) joined.set(key, [...taken]);
      else known.push(...taken);
    }
  }
  return joined;
}

/**
 * The problem with time of its resources taken by others. What nobody touches stays the same object, and what is taken
 * in the same way again becomes the same array again, so that the cache finds again what it made of it.
 */
export function withHeld(problem: ChainProblem, held: Iterable<HeldTime>, cache: ChainCache): ChainProblem {
  const { slotCount } = problem;
  const ids = new Map<string, string>();
  const ranges = joinedTime(held);
  const takenOf = (key: string, taken: readonly SlotRange[]): string => {
    let id = ids.get(key);
    if (id === undefined) {
      id = taken
        .map(({ startSlot, endSlot }) => `${String(startSlot)}-${String(endSlot)}`)
        .sort()
        .join();
      ids.set(key, id);
    }
    return id;
  };
  return eachResource(problem, (resource) => {
    const taken = ranges.get(resource.key);
    if (taken === undefined) return resource;
    const made = `less:${String(cache.id(resource.free))}:${String(slotCount)}:${takenOf(resource.key, taken)}`;
    return { ...resource, free: cache.get(made, () => without(resource.free, taken, slotCount)) };
  });
}

function eachResource(
  problem: ChainProblem,
  change: <Resource extends ChainResource>(resource: Resource) => Resource,
): ChainProblem {
  return {
    ...problem,
    visits: problem.visits.map((visit) => ({
      ...visit,
      options: visit.options.map((option) => ({
        ...option,
        clinicians: option.clinicians.map(change),
        chairs: option.chairs.map(change),
        assistants: option.assistants?.map(change) ?? null,
        kits: option.kits.map((kit) => ({ ...kit, units: kit.units.map(change) })),
      })),
    })),
    phases: problem.phases.map((phase) => ({
      ...phase,
      labs: phase.labs.map((lab) => ({
        ...lab,
        operations: lab.operations.map((operation) => ({ ...operation, places: operation.places.map(change) })),
      })),
    })),
  };
}

function without(free: SlotBits, taken: readonly SlotRange[], slotCount: number): SlotBits {
  const bits = free.slice();
  for (const { startSlot, endSlot } of taken) {
    for (let slot = Math.max(0, startSlot); slot < Math.min(endSlot, slotCount); slot++) {
      bits[slot >> 5]! &= ~(1 << (slot & 31));
    }
  }
  return bits;
}
