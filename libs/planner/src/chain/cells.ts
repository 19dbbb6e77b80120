import { and, clearInto, emptyBits, hasBit, isEmpty, nextBit, orInto, slotsOf } from './bits.js';
import type { ChainVector, SlotBits } from './model.js';
import { addImage, addPreimage, joins, type Piece } from './piece.js';
import type { Link, PreparedChain } from './prepare.js';
import type { Region, Witness } from './region.js';

/** Start sets by cell of (wishes broken, clinician changes, clinic changes), absent when empty. */
type Cells = Map<number, SlotBits>;

/** Packs the three counts of a cell; each stays below 64, so that sums never carry over. */
const CLINICIAN = 1 << 6;
const CLINIC = 1 << 12;
const countsOf = (cell: number): [number, number, number] => [cell & 63, (cell >> 6) & 63, cell >> 12];

function within(left: number, right: number): boolean {
  return (left & 63) <= (right & 63) && ((left >> 6) & 63) <= ((right >> 6) & 63) && left >> 12 <= right >> 12;
}

function add(cells: Cells, cell: number, bits: SlotBits): void {
  const known = cells.get(cell);
  if (known === undefined) cells.set(cell, bits);
  else orInto(known, bits);
}

/** Drops starts that another cell holds with no count higher. */
function prune(cells: Cells): Cells {
  if (cells.size < 2) return cells;
  const order = [...cells.keys()].sort((a, b) => a - b);
  for (const cell of order) {
    const bits = cells.get(cell)!;
    for (const other of order) {
      if (other === cell || !within(other, cell)) continue;
      const better = cells.get(other);
      if (better !== undefined) clearInto(bits, better);
    }
    if (isEmpty(bits)) cells.delete(cell);
  }
  return cells;
}

/** `true` when a known vector is nowhere above. */
export function covered(known: readonly ChainVector[], day: number, cell: number): boolean {
  const [wishes, clinicians, clinics] = countsOf(cell);
  return known.some(
    (vector) =>
      vector.deliveryDay <= day &&
      vector.wishesBroken <= wishes &&
      vector.clinicianChanges <= clinicians &&
      vector.clinicChanges <= clinics,
  );
}

function ownCells(prepared: PreparedChain, region: Region, visit: number, state: number): Cells {
  const { problem } = prepared;
  const { clinic, clinician } = prepared.states[visit]![state]!;
  const bits = region.starts[visit]![state]!;
  const { wished } = problem.visits[visit]!;
  let base = 0;
  if (visit === 0 && problem.seenBy !== null) {
    if (problem.seenBy.clinician !== clinician) base += CLINICIAN;
    if (problem.seenBy.clinic !== clinic) base += CLINIC;
  }
  const cells: Cells = new Map();
  const kept = wished === null ? bits : and(bits, wished);
  if (!isEmpty(kept)) cells.set(base, kept);
  if (wished !== null) {
    const broken = bits.slice();
    clearInto(broken, wished);
    if (!isEmpty(broken)) cells.set(base + 1, broken);
  }
  return cells;
}

/** Parent starts in a piece with a child start. */
function addPartners(link: Link, piece: Piece, child: SlotBits, parent: SlotBits, out: SlotBits): void {
  if (link.child === link.early) addImage(child, piece, out);
  else addPreimage(child, piece, parent, out);
}

export interface Layers {
  /** Cells by visit and state, the part of the tree away from delivery included. */
  readonly cells: readonly (readonly Cells[])[];
  /** What each link hands on, by link and parent state. */
  readonly messages: readonly (readonly Cells[])[];
}

function messageOf(prepared: PreparedChain, region: Region, link: Link, cells: readonly (readonly Cells[])[]): Cells[] {
  const { slotCount } = prepared.problem;
  const children = prepared.states[link.child]!;
  const unions = new Map<number, Cells>();
  children.forEach(({ option }, index) => {
    const union = unions.get(option) ?? new Map<number, SlotBits>();
    unions.set(option, union);
    for (const [cell, bits] of cells[link.child]![index]!) add(union, cell, bits.slice());
  });
  // The image of a cell is the same for every parent clinician of a clinic.
  const images = new Map<string, SlotBits>();
  const imageOf = (key: string, bits: SlotBits, pieces: readonly Piece[], parent: SlotBits): SlotBits => {
    let image = images.get(key);
    if (image === undefined) {
      image = emptyBits(slotCount);
      for (const piece of pieces) addPartners(link, piece, bits, parent, image);
      images.set(key, image);
    }
    return image;
  };
  const parents = prepared.states[link.parent]!;
  const anyStart = new Map<number, SlotBits>();
  parents.forEach(({ option }, index) => {
    const known = anyStart.get(option);
    if (known === undefined) anyStart.set(option, region.starts[link.parent]![index]!.slice());
    else orInto(known, region.starts[link.parent]![index]!);
  });
  return parents.map((own, state) => {
    const out: Cells = new Map();
    const starts = region.starts[link.parent]![state]!;
    if (isEmpty(starts)) return out;
    const take = (key: string, childCells: Cells, option: number, change: number): void => {
      const pieces = link.child === link.early ? link.pieces(option, own.option) : link.pieces(own.option, option);
      for (const [cell, bits] of childCells) {
        const image = imageOf(`${key}:${String(cell)}`, bits, pieces, anyStart.get(own.option)!);
        const hit = and(image, starts);
        if (!isEmpty(hit)) add(out, cell + change, hit);
      }
    };
    for (const [option, union] of unions) {
      const clinic = prepared.problem.visits[link.child]!.options[option]!.clinic;
      const moves = clinic === own.clinic ? 0 : CLINIC;
      const others = children.filter((child) => child.option === option).length;
      const same = children.findIndex((child) => child.option === option && child.clinician === own.clinician);
      const key = `${String(option)}:${String(own.option)}`;
      if (same >= 0) take(`${key}:${String(same)}`, cells[link.child]![same]!, option, moves);
      if (same < 0 || others > 1) take(key, union, option, moves + CLINICIAN);
    }
    return prune(out);
  });
}

/** Reachability towards delivery, one layer per cell; cells that a known vector covers are left out. */
export function layersOf(
  prepared: PreparedChain,
  region: Region,
  known: readonly ChainVector[],
  firstDay: number,
): Layers {
  const { states, links } = prepared;
  const cells: Cells[][] = states.map((list, visit) =>
    list.map((_, state) => ownCells(prepared, region, visit, state)),
  );
  const messages: Cells[][] = [];
  for (const link of links) {
    const handed = messageOf(prepared, region, link, cells);
    messages.push(handed);
    cells[link.parent] = cells[link.parent]!.map((own, state) => {
      const out: Cells = new Map();
      for (const [cell, bits] of own) {
        for (const [other, partners] of handed[state]!) {
          if (covered(known, firstDay, cell + other)) continue;
          const hit = and(bits, partners);
          if (!isEmpty(hit)) add(out, cell + other, hit);
        }
      }
      return prune(out);
    });
  }
  return { cells, messages };
}

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

/** The non-dominated vectors of the layers, each with one delivery start that has it. */
export function vectorsOf(prepared: PreparedChain, layers: Layers): Reached[] {
  const { problem } = prepared;
  const all: Reached[] = [];
  layers.cells[problem.deliveryVisit]!.forEach((cells, state) => {
    for (const [cell, bits] of cells) {
      const slot = nextBit(bits, 0);
      const [wishesBroken, clinicianChanges, clinicChanges] = countsOf(cell);
      all.push({
        vector: { deliveryDay: problem.dayOfSlot[slot]!, wishesBroken, clinicianChanges, clinicChanges },
        cell,
        state,
        slot,
      });
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

/** A plan with the vector that `reached` stands for. */
export function witnessOf(prepared: PreparedChain, region: Region, layers: Layers, reached: Reached): Witness {
  const { links, states, problem } = prepared;
  const witness = { states: new Int32Array(states.length), starts: new Int32Array(states.length) };
  const follow = (visit: number, state: number, slot: number, cell: number): void => {
    witness.states[visit] = state;
    witness.starts[visit] = slot;
    const inward = links.flatMap((link, index) => (link.parent === visit ? [{ link, index }] : []));
    const shares: number[] = [];
    const share = (at: number, rest: number): boolean => {
      if (at === inward.length) {
        const own = ownCells(prepared, region, visit, state).get(rest);
        return own !== undefined && hasBit(own, slot);
      }
      for (const [part, bits] of layers.messages[inward[at]!.index]![state]!) {
        if (!within(part, rest) || !hasBit(bits, slot)) continue;
        shares[at] = part;
        if (share(at + 1, rest - part)) return true;
      }
      return false;
    };
    if (!share(0, cell)) throw new Error('A cell without a plan: the layers are inconsistent');
    inward.forEach(({ link }, at) => {
      const child = childFor(prepared, layers, link, state, slot, shares[at]!);
      follow(link.child, child.state, child.slot, child.cell);
    });
  };
  follow(problem.deliveryVisit, reached.state, reached.slot, reached.cell);
  return witness;
}

function childFor(
  prepared: PreparedChain,
  layers: Layers,
  link: Link,
  state: number,
  slot: number,
  share: number,
): { state: number; slot: number; cell: number } {
  const own = prepared.states[link.parent]![state]!;
  const childIsEarly = link.child === link.early;
  for (let index = 0; index < prepared.states[link.child]!.length; index++) {
    const child = prepared.states[link.child]![index]!;
    const change = (child.clinician === own.clinician ? 0 : CLINICIAN) + (child.clinic === own.clinic ? 0 : CLINIC);
    const pieces = childIsEarly ? link.pieces(child.option, own.option) : link.pieces(own.option, child.option);
    for (const [cell, bits] of layers.cells[link.child]![index]!) {
      // A union over clinicians may charge a change that this clinician does not cost: the cell is then lower still.
      if (!within(cell + change, share)) continue;
      for (const at of slotsOf(bits)) {
        const [early, late] = childIsEarly ? [at, slot] : [slot, at];
        if (pieces.some((piece) => joins(piece, early, late))) return { state: index, slot: at, cell };
      }
    }
  }
  throw new Error('A message without a child: the layers are inconsistent');
}
