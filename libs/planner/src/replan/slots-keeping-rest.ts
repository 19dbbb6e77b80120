import { slotsOf } from '../chain/bits.js';
import { ChainCache } from '../chain/cache.js';
import { cheapestPlans } from '../chain/explore.js';
import type { ChainProblem } from '../chain/model.js';
import { objectiveFor } from '../chain/objective.js';
import { prepareChain, type PreparedChain, type State } from '../chain/prepare.js';
import { between, onlyStates, shrink, wholeRegions, type Region } from '../chain/region.js';
import type { CurrentVisit } from './replan-chain.js';

/** A start of one visit, and who would see the patient where. */
export interface KeepingStart {
  readonly startSlot: number;
  readonly clinic: string;
  readonly clinician: string;
}

/**
 * Starts of one visit that leave every other visit where it is; laboratory work may move. Exact.
 *
 * @param current where each visit is now; `null` leaves that visit free. The entry of `visit` itself is not looked at.
 * @param visit index of the visit that may move
 * @param most starts wanted; the search ends with the last of them
 * @returns by start, then in the order of the problem's options and clinicians
 */
export function slotsKeepingRest(
  problem: ChainProblem,
  current: readonly (CurrentVisit | null)[],
  visit: number,
  most: number,
  cache = new ChainCache(),
): KeepingStart[] {
  const prepared = prepareChain(problem, cache);
  const regions = wholeRegions(prepared)
    .map((region) => shrink(prepared, pinned(region, current, visit)))
    .filter((region) => region !== null);
  const kept: KeepingStart[] = [];
  for (const { startSlot, state, regions: from } of candidates(prepared, regions, visit)) {
    if (kept.length >= most) break;
    if (!from.some((region) => hasPlan(prepared, region, visit, startSlot, state))) continue;
    kept.push({ startSlot, clinic: state.clinic, clinician: state.clinician });
  }
  return kept;
}

/** The region with every visit but one held to its present start and clinic. */
function pinned(region: Region, current: readonly (CurrentVisit | null)[], except: number): Region {
  let held = region;
  current.forEach((now, visit) => {
    if (now === null || visit === except) return;
    held = onlyStates(held, visit, ({ clinic }) => clinic === now.clinic);
    held = between(held, visit, now.startSlot, now.startSlot);
  });
  return held;
}

interface Candidate {
  readonly startSlot: number;
  readonly state: State;
  /** Regions that hold it. */
  readonly regions: readonly Region[];
}

/** Starts that no pair of neighbouring visits rules out, earliest first. */
function candidates(prepared: PreparedChain, regions: readonly Region[], visit: number): Candidate[] {
  const found = prepared.states[visit]!.flatMap((state, rank) => {
    const bySlot = new Map<number, Region[]>();
    for (const region of regions) {
      const index = region.states[visit]!.indexOf(state);
      for (const slot of index < 0 ? [] : slotsOf(region.starts[visit]![index]!)) {
        bySlot.set(slot, [...(bySlot.get(slot) ?? []), region]);
      }
    }
    return [...bySlot].map(([startSlot, from]) => ({ startSlot, state, rank, regions: from }));
  });
  return found.sort((a, b) => a.startSlot - b.startSlot || a.rank - b.rank);
}

/** Without relations off the tree the start sets of a shrunk region are exact; with them a plan has to be found. */
function hasPlan(prepared: PreparedChain, region: Region, visit: number, startSlot: number, state: State): boolean {
  if (prepared.others.length === 0) return true;
  const only = onlyStates(between(region, visit, startSlot, startSlot), visit, (own) => own === state);
  const objective = objectiveFor(prepared, ['day', 'wishes', 'clinicians', 'clinics']);
  return cheapestPlans(prepared, [only], objective, []).next().done !== true;
}
