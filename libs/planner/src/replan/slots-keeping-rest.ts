import { emptyBits, hasBit, slotsOf } from '../chain/bits.js';
import { ChainCache } from '../chain/cache.js';
import { cheapestPlans } from '../chain/explore.js';
import type { ChainProblem } from '../chain/model.js';
import { objectiveFor } from '../chain/objective.js';
import { prepareChain, type PreparedChain } from '../chain/prepare.js';
import { between, shrink, wholeRegions, withStarts, type Region } from '../chain/region.js';
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
    .map((region) => shrink(prepared, pinned(prepared, region, current, visit)))
    .filter((region) => region !== null);
  const kept: KeepingStart[] = [];
  for (const { startSlot, state } of candidates(prepared, regions, visit)) {
    if (kept.length >= most) break;
    const found = prepared.states[visit]![state]!;
    if (!regions.some((region) => hasPlan(prepared, region, visit, startSlot, state))) continue;
    kept.push({ startSlot, clinic: found.clinic, clinician: found.clinician });
  }
  return kept;
}

/** The region with every visit but one held to its present start and clinic. */
function pinned(
  prepared: PreparedChain,
  region: Region,
  current: readonly (CurrentVisit | null)[],
  except: number,
): Region {
  const none = emptyBits(prepared.problem.slotCount);
  let held = region;
  current.forEach((now, visit) => {
    if (now === null || visit === except) return;
    held = withStarts(held, visit, (bits, state) =>
      prepared.states[visit]![state]!.clinic === now.clinic ? bits : none,
    );
    held = between(held, visit, now.startSlot, now.startSlot);
  });
  return held;
}

/** Starts that no pair of neighbouring visits rules out, earliest first. */
function candidates(
  prepared: PreparedChain,
  regions: readonly Region[],
  visit: number,
): { startSlot: number; state: number }[] {
  const found = prepared.states[visit]!.flatMap((_, state) =>
    [...new Set(regions.flatMap((region) => [...slotsOf(region.starts[visit]![state]!)]))].map((startSlot) => ({
      startSlot,
      state,
    })),
  );
  return found.sort((a, b) => a.startSlot - b.startSlot || a.state - b.state);
}

/** Without relations off the tree the start sets of a shrunk region are exact; with them a plan has to be found. */
function hasPlan(prepared: PreparedChain, region: Region, visit: number, startSlot: number, state: number): boolean {
  if (!hasBit(region.starts[visit]![state]!, startSlot)) return false;
  if (prepared.others.length === 0) return true;
  const none = emptyBits(prepared.problem.slotCount);
  const only = withStarts(between(region, visit, startSlot, startSlot), visit, (bits, index) =>
    index === state ? bits : none,
  );
  const objective = objectiveFor(prepared, ['day', 'wishes', 'clinicians', 'clinics']);
  return cheapestPlans(prepared, [only], objective, []).next().done !== true;
}
