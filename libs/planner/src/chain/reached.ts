import { hasBit, nextBit } from './bits.js';
import { CLINIC, CLINICIAN, covered, holds, isWithin, ownCells, vectorOf } from './cells.js';
import { piecesFor, type Layers } from './layers.js';
import type { ChainVector } from './model.js';
import { firstAfter, firstBefore, lastBefore } from './piece.js';
import type { Link, PreparedChain, State } from './prepare.js';
import type { Region, Witness } from './region.js';

/** A vector of the layers, with one delivery start that has it. */
export interface Reached {
  readonly vector: ChainVector;
  readonly cell: number;
  readonly state: number;
  readonly slot: number;
}

export function byVector(a: ChainVector, b: ChainVector): number {
  return (
    a.deliveryDay - b.deliveryDay ||
    a.wishesBroken - b.wishesBroken ||
    a.clinicianChanges - b.clinicianChanges ||
    a.clinicChanges - b.clinicChanges
  );
}

/** The non-dominated vectors of the layers. */
export function vectorsOf({ problem }: PreparedChain, layers: Layers): Reached[] {
  const all: Reached[] = [];
  layers.cells[problem.deliveryVisit]!.forEach((cells, state) => {
    for (const [cell, bits] of cells) {
      const slot = nextBit(bits, 0);
      all.push({ vector: vectorOf(cell, problem.dayOfSlot[slot]!), cell, state, slot });
    }
  });
  all.sort((a, b) => byVector(a.vector, b.vector));
  const front: Reached[] = [];
  const known: ChainVector[] = [];
  for (const reached of all) {
    if (covered(known, reached.vector.deliveryDay, reached.cell)) continue;
    front.push(reached);
    known.push(reached.vector);
  }
  return front;
}

interface Step {
  readonly state: number;
  readonly slot: number;
  readonly cell: number;
}

/**
 * A plan with the vector that `reached` stands for.
 *
 * @param isLate whether visits before another start as late as they can, which keeps longest waits across visits, or as
 * early as they can
 */
export function witnessOf(
  prepared: PreparedChain,
  region: Region,
  layers: Layers,
  reached: Reached,
  isLate: boolean,
): Witness {
  const { links, problem } = prepared;
  const states = new Array<State>(problem.visits.length);
  const starts = new Int32Array(problem.visits.length);
  const follow = (visit: number, { state, slot, cell }: Step): void => {
    states[visit] = region.states[visit]![state]!;
    starts[visit] = slot;
    const own = ownCells(prepared, region, visit, state);
    const inward = links.flatMap((link, index) => (link.parent === visit ? [{ link, index }] : []));
    const shares: number[] = [];
    const share = (at: number, rest: number): boolean => {
      if (at === inward.length) return holds(own, rest, slot);
      for (const [part, bits] of layers.messages[inward[at]!.index]![state]!) {
        if (!isWithin(part, rest) || !hasBit(bits, slot)) continue;
        shares[at] = part;
        if (share(at + 1, rest - part)) return true;
      }
      return false;
    };
    if (!share(0, cell)) throw new Error('A cell without a plan: the layers are inconsistent');
    inward.forEach(({ link }, at) => {
      follow(link.child, childFor(region, layers, link, { state, slot, cell: shares[at]! }, isLate));
    });
  };
  follow(problem.deliveryVisit, reached);
  return { states, starts };
}

function childFor(
  region: Region,
  layers: Layers,
  link: Link,
  { state, slot, cell: share }: Step,
  isLate: boolean,
): Step {
  let last: Step | null = null;
  const own = region.states[link.parent]![state]!;
  for (let index = 0; index < region.states[link.child]!.length; index++) {
    const child = region.states[link.child]![index]!;
    const change = (child.clinician === own.clinician ? 0 : CLINICIAN) + (child.clinic === own.clinic ? 0 : CLINIC);
    const pieces = piecesFor(link, child.option, own.option);
    for (const [cell, bits] of layers.cells[link.child]![index]!) {
      // A union over clinicians may charge a change that this clinician does not cost: the cell is then lower still.
      if (!isWithin(cell + change, share)) continue;
      for (const piece of pieces) {
        if (link.child === link.early && isLate) {
          const at = lastBefore(piece, bits, slot);
          if (at > (last?.slot ?? -1)) last = { state: index, slot: at, cell };
          continue;
        }
        const at = link.child === link.early ? firstBefore(piece, bits, slot) : firstAfter(piece, bits, slot);
        if (at >= 0) return { state: index, slot: at, cell };
      }
    }
  }
  if (last !== null) return last;
  throw new Error('A message without a child: the layers are inconsistent');
}
