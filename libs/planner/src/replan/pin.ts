import { within } from '../chain/bits.js';
import type { ChainOperation, ChainProblem, LabAlternative } from '../chain/model.js';
import type { CurrentOperation } from './joint-case.js';
import type { CurrentVisit } from './replan-chain.js';

/** The problem with every booked visit held to its present start and clinic; who sees the patient there is free. */
export function pinVisits(problem: ChainProblem, current: readonly (CurrentVisit | null)[]): ChainProblem {
  return {
    ...problem,
    visits: problem.visits.map((visit, index) => {
      const now = current[index] ?? null;
      if (now === null) return visit;
      const options = visit.options
        .filter(({ clinic }) => clinic === now.clinic)
        .map((option) => ({ ...option, allowed: within(option.allowed, now.startSlot, now.startSlot) }));
      return { ...visit, options };
    }),
  };
}

/** The problem with operations held to their present start, laboratory and place. */
export function pinOperations(problem: ChainProblem, current: readonly CurrentOperation[]): ChainProblem {
  return eachPlanned(problem, current, (operation, now) => ({
    ...atPlace(operation, now),
    allowed: allowedFrom(operation, problem.slotCount, now.startSlot, now.startSlot),
    batches: operation.batches.filter(({ startSlot }) => startSlot === now.startSlot),
  }));
}

/** The problem with operations in their present laboratory and place, no earlier than now: only slack is used up. */
export function onlyLater(problem: ChainProblem, current: readonly CurrentOperation[]): ChainProblem {
  return eachPlanned(problem, current, (operation, now) => ({
    ...atPlace(operation, now),
    allowed: allowedFrom(operation, problem.slotCount, now.startSlot, problem.slotCount - 1),
  }));
}

function eachPlanned(
  problem: ChainProblem,
  current: readonly CurrentOperation[],
  change: (operation: ChainOperation, now: CurrentOperation) => ChainOperation,
): ChainProblem {
  const known = new Map(current.map((each) => [each.operation, each]));
  const changed = (lab: LabAlternative): LabAlternative => ({
    ...lab,
    operations: lab.operations.map((operation) => {
      const now = known.get(operation.key);
      return now === undefined ? operation : change(operation, now);
    }),
  });
  return {
    ...problem,
    phases: problem.phases.map((phase) => {
      const own = phase.labs.flatMap(({ operations }) => operations.flatMap(({ key }) => known.get(key) ?? []));
      const labs = phase.labs.filter(({ lab }) => own.every((now) => now.lab === lab));
      return { ...phase, labs: labs.map(changed) };
    }),
  };
}

const atPlace = (operation: ChainOperation, { place }: CurrentOperation): ChainOperation =>
  place === null ? operation : { ...operation, places: operation.places.filter(({ key }) => key === place) };

function allowedFrom({ allowed }: ChainOperation, slotCount: number, first: number, last: number): Uint32Array {
  return within(allowed ?? new Uint32Array((slotCount + 31) >> 5).fill(0xffffffff), first, last);
}
