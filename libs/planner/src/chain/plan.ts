import { missedBuffers } from './best.js';
import { hasBit } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainPlan, PlannedOperation, PlannedVisit } from './model.js';
import { holdsOf } from './operation.js';
import type { PhaseGroup } from './phases.js';
import { joins } from './piece.js';
import { firstFree, type PreparedChain } from './prepare.js';
import type { Witness } from './region.js';
import { satisfied } from './region.js';
import { workBetween, type Alternative, type Relation } from './relations.js';

/** The alternative that a plan uses for a relation. */
function used(witness: Witness, relation: Relation): Alternative {
  const options = relation.visits.map((visit) => witness.states[visit]!.option);
  const found = satisfied(relation.alternatives(options), witness.starts);
  if (found === undefined) throw new Error(`A plan breaks "${relation.label}": the search is inconsistent`);
  return found;
}

function operationsOf(
  prepared: PreparedChain,
  witness: Witness,
  group: PhaseGroup,
  cache: ChainCache,
): PlannedOperation[] {
  const { problem } = prepared;
  const { slotCount } = problem;
  const options = group.visits.map((visit) => witness.states[visit]!.option);
  const work = workBetween(problem, group, options, witness.starts, cache);
  if (work === null) throw new Error('No operations fit between the visits: the pieces are inconsistent');
  const { nodes, modes } = work.branch;
  return nodes.map(({ phase, lab, operation: index, starts }, at) => {
    const alternative = problem.phases[phase]!.labs[lab]!;
    const operation = alternative.operations[index]!;
    const startSlot = work.settled.values[group.visits.length + at]!;
    const place = work.settled.places[at] ?? null;
    const holding = operation.segments.some(({ holdsPlace }) => holdsPlace);
    const merged = holding && place === null;
    const batch =
      modes[at]!.batch ??
      (merged
        ? operation.batches.find((other) => other.startSlot === startSlot && other.endSlot === starts.end[startSlot])
        : undefined);
    return {
      phase: problem.phases[phase]!.key,
      operation: operation.key,
      lab: alternative.lab,
      centre: operation.centre,
      startSlot,
      endSlot: modes[at]!.end[startSlot]!,
      place: batch?.place ?? place,
      batch: batch?.key ?? null,
      holds: batch === undefined ? holdsOf(operation, slotCount, startSlot, cache) : [],
    };
  });
}

function visitOf(
  prepared: PreparedChain,
  witness: Witness,
  visit: number,
  units: ReadonlyMap<string, string>,
  cache: ChainCache,
): PlannedVisit {
  const { problem } = prepared;
  const state = witness.states[visit]!;
  const option = problem.visits[visit]!.options[state.option]!;
  const startSlot = witness.starts[visit]!;
  const endSlot = startSlot + option.lengthSlots;
  return {
    visit: problem.visits[visit]!.key,
    startSlot,
    endSlot,
    clinic: state.clinic,
    clinician: state.clinician,
    chair: firstFree(option.chairs, startSlot, option.lengthSlots, cache)!.key,
    assistant:
      option.assistants === null ? null : firstFree(option.assistants, startSlot, option.lengthSlots, cache)!.key,
    kits: option.kits.map(({ kind, units: all, reprocessingSlots }, need) => {
      const chosen = units.get(`${String(visit)}:${String(need)}`);
      const unit = chosen ?? firstFree(all, startSlot, option.lengthSlots + reprocessingSlots, cache)!.key;
      return { kind, unit, readySlot: endSlot + reprocessingSlots };
    }),
  };
}

/** Names every resource and operation of a plan that the search has found. */
export function planOf(prepared: PreparedChain, witness: Witness, cache: ChainCache): ChainPlan {
  const { problem, links, others, unary } = prepared;
  const relations = [...unary, ...links.flatMap((link) => link.relations), ...others];
  const units = new Map<string, string>();
  for (const relation of relations) {
    if (relation.keeps !== null) continue;
    for (const { visit, need, unit } of used(witness, relation).units) {
      units.set(`${String(visit)}:${String(need)}`, unit);
    }
  }
  let wishesBroken = 0;
  let clinicianChanges = 0;
  let clinicChanges = 0;
  let bufferCost = 0;
  let placementCost = 0;
  let startSum = 0;
  problem.visits.forEach(({ wished, follows }, visit) => {
    const own = witness.states[visit]!;
    const start = witness.starts[visit]!;
    const before = follows === null ? problem.seenBy : witness.states[follows]!;
    if (wished !== null && !hasBit(wished, start)) wishesBroken++;
    if (before !== null && before.clinician !== own.clinician) clinicianChanges++;
    if (before !== null && before.clinic !== own.clinic) clinicChanges++;
    placementCost += own.placementCost?.[start] ?? 0;
    startSum += start;
  });
  for (const { early, late, pieces } of links) {
    const [t, y] = [witness.starts[early]!, witness.starts[late]!];
    const ways = pieces(witness.states[early]!.option, witness.states[late]!.option);
    bufferCost += Math.min(
      ...ways.filter((piece) => joins(piece, t, y)).map((piece) => missedBuffers(prepared, piece, t, y)),
    );
  }
  const operations = prepared.groups.flatMap((group) => operationsOf(prepared, witness, group, cache));
  const rank = new Map(problem.phases.map(({ key }, index) => [key, index]));
  operations.sort((a, b) => rank.get(a.phase)! - rank.get(b.phase)!);
  return {
    vector: {
      deliveryDay: problem.dayOfSlot[witness.starts[problem.deliveryVisit]!]!,
      wishesBroken,
      clinicianChanges,
      clinicChanges,
    },
    ties: { bufferCost, placementCost, startSum },
    visits: problem.visits.map((_, visit) => visitOf(prepared, witness, visit, units, cache)),
    operations,
  };
}
