import { DomainError } from '@archwright/kernel';
import { byStart, tablesIn, visitEnds } from './arcs.js';
import { isEmpty, longestRun } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainProblem } from './model.js';
import { operationStarts } from './operation.js';

/** No clinic is ever open long enough for a visit. */
export class VisitTooLongError extends DomainError {
  constructor(visit: string, lengthSlots: number, longestOpeningSlots: number) {
    super(
      'planner.visit-too-long',
      `Visit "${visit}" takes ${String(lengthSlots)} slots, the longest opening of any accepted clinic is ` +
        `${String(longestOpeningSlots)}. Shorten the visit to that, split it, or open a clinic for longer.`,
      { visit, lengthSlots, longestOpeningSlots },
    );
  }
}

/** Nobody who may do a visit works in any accepted clinic. */
export class NoClinicianError extends DomainError {
  constructor(visit: string, clinics: readonly string[]) {
    super(
      'planner.no-clinician',
      `Nobody in ${clinics.length === 0 ? 'any accepted clinic' : clinics.map((clinic) => `"${clinic}"`).join(', ')} may do visit ` +
        `"${visit}". Accept a clinician or a clinic that has the skill.`,
      { visit, clinics },
    );
  }
}

/** In every laboratory of a phase some operation has no start at all. */
export class LabWithoutCapacityError extends DomainError {
  constructor(phase: string, blocked: readonly { lab: string; operation: string; centre: string }[]) {
    super(
      'planner.lab-without-capacity',
      `Phase "${phase}" can be done in no laboratory: ` +
        blocked
          .map(({ lab, operation, centre }) => `"${lab}" has no room for "${operation}" at "${centre}"`)
          .join('; ') +
        '. Free or add a place there, or name another laboratory.',
      { phase, blocked },
    );
  }
}

/** A shortest wait that is longer than the longest wait allowed, whatever the bookings. */
export class ContradictoryWaitsError extends DomainError {
  constructor(longest: string, shortest: readonly string[], missingSlots: number) {
    super(
      'planner.contradictory-waits',
      `Wait "${longest}" ends before ${shortest.map((key) => `"${key}"`).join(' then ')} can be over, by ` +
        `${String(missingSlots)} slots at least. Allow "${longest}" that much more, or shorten the others.`,
      { longest, shortest, missingSlots },
    );
  }
}

/** Longest waits inside laboratory work that end before the work on the way can be done, however empty the benches. */
export class ContradictoryWorkError extends DomainError {
  constructor(phase: string, waits: readonly string[]) {
    super(
      'planner.contradictory-work',
      `Phase "${phase}" cannot keep ${waits.map((wait) => `"${wait}"`).join(' or ')} even on empty benches: the work on the ` +
        'way takes longer. Allow that wait more, or shorten the work.',
      { phase, waits },
    );
  }
}

function requireVisits(problem: ChainProblem): void {
  for (const { key, options } of problem.visits) {
    const accepted = options.filter(({ refused }) => !refused);
    if (accepted.every(({ clinicians }) => clinicians.every(({ refused }) => refused))) {
      throw new NoClinicianError(
        key,
        accepted.map(({ clinic }) => clinic),
      );
    }
    const longest = Math.max(...accepted.map(({ open }) => longestRun(open, problem.slotCount)));
    if (accepted.every(({ open, lengthSlots }) => longestRun(open, problem.slotCount) < lengthSlots)) {
      throw new VisitTooLongError(key, Math.min(...accepted.map(({ lengthSlots }) => lengthSlots)), longest);
    }
  }
}

function requireLabs(problem: ChainProblem, cache: ChainCache): void {
  for (const { key, labs } of problem.phases) {
    const blocked = labs.flatMap(({ lab, operations }) => {
      const full = operations.find((operation) => {
        const starts = operationStarts(operation, problem.slotCount, cache);
        return operation.batches.length === 0 && isEmpty(starts.any);
      });
      return full === undefined ? [] : [{ lab, operation: full.key, centre: full.centre }];
    });
    if (blocked.length === labs.length) throw new LabWithoutCapacityError(key, blocked);
  }
}

interface Reach {
  readonly lo: Int32Array;
  readonly keys: readonly string[];
}

/**
 * Looks for a longest wait that ends before the shortest waits on the way can be over, whatever the start. Only starts
 * whose shortest waits end within the axis prove anything, so a plan that merely lies beyond it is no contradiction.
 */
function requireWaits(problem: ChainProblem): void {
  const { slotCount, visits, lags } = problem;
  for (let from = 0; from < visits.length; from++) {
    const reach = new Map<number, Reach>();
    reach.set(from, { lo: Int32Array.from({ length: slotCount }, (_, slot) => slot), keys: [] });
    for (let to = from + 1; to < visits.length; to++) {
      const ways: Reach[] = [];
      for (const [middle, before] of reach) {
        const near = lags.filter((lag) => lag.from === middle && lag.to === to && lag.lo !== null);
        if (near.length === 0 && middle + 1 !== to) continue;
        // With several clinics the least bound counts: the waits then contradict each other in all of them.
        const own = new Int32Array(slotCount).fill(slotCount);
        for (const option of visits[middle]!.options) {
          const end = visitEnds(option.lengthSlots, slotCount);
          const tables = near.map((lag) => byStart(tablesIn(lag, option.clinic), lag.anchor, end, slotCount).lo);
          for (let slot = 0; slot < slotCount; slot++) {
            const least = middle + 1 === to ? end[slot]! : 0;
            own[slot] = Math.min(
              own[slot]!,
              tables.reduce((most, table) => Math.max(most, table?.[slot] ?? 0), least),
            );
          }
        }
        ways.push({
          lo: before.lo.map((slot) => (slot < slotCount ? own[slot]! : slotCount)),
          keys: [...before.keys, ...(near.length === 0 ? [visits[middle]!.key] : near.map(({ key }) => key))],
        });
      }
      if (ways.length === 0) continue;
      for (const lag of lags) {
        if (lag.from !== from || lag.to !== to) continue;
        const highs = visits[from]!.options.map((option) => {
          const end = visitEnds(option.lengthSlots, slotCount);
          return byStart(tablesIn(lag, option.clinic), lag.anchor, end, slotCount).hi;
        });
        for (const { lo, keys } of ways) {
          let missing = Infinity;
          for (let slot = 0; slot < slotCount; slot++) {
            if (lo[slot]! >= slotCount) break;
            const latest = Math.max(...highs.map((high) => high?.[slot] ?? slotCount));
            missing = Math.min(missing, lo[slot]! - latest);
          }
          if (missing > 0 && missing < Infinity) throw new ContradictoryWaitsError(lag.key, keys, missing);
        }
      }
      reach.set(to, {
        lo: ways.reduce((most, { lo }) => most.map((slot, at) => Math.max(slot, lo[at]!)), new Int32Array(slotCount)),
        keys: ways.at(-1)!.keys,
      });
    }
  }
}

/** Refuses what no choice of times could ever satisfy. */
export function requirePossible(problem: ChainProblem, cache: ChainCache): void {
  requireVisits(problem);
  requireLabs(problem, cache);
  requireWaits(problem);
}
