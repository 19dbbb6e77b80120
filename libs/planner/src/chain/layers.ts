import { addWords, nextBit } from './bits.js';
import { addCommon, addTo, CLINIC, CLINICIAN, covered, ownCells, prune, type Cells } from './cells.js';
import type { ChainVector, SlotBits } from './model.js';
import { addImage, addPreimage, type Piece } from './piece.js';
import type { Link, PreparedChain } from './prepare.js';
import { EarliestDelivery } from './earliest-delivery.js';
import type { Region } from './region.js';

/** Reachability towards delivery. All of its sets are of the pool. */
export interface Layers {
  /** Cells by visit and state, the part of the tree away from delivery included. */
  readonly cells: readonly (readonly Cells[])[];
  /** What each link hands on, by link and parent state. */
  readonly messages: readonly (readonly Cells[])[];
}

/** Parent starts in a piece with a child start. */
function addPartners(link: Link, piece: Piece, child: SlotBits, parent: SlotBits, out: SlotBits): void {
  if (link.child === link.early) addImage(child, piece, out);
  else addPreimage(child, piece, parent, out);
}

export function piecesFor(link: Link, child: number, parent: number): readonly Piece[] {
  return link.child === link.early ? link.pieces(child, parent) : link.pieces(parent, child);
}

/** Indexes of a visit's states by option. */
function statesByOption(region: Region, visit: number): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  region.states[visit]!.forEach(({ option }, state) => {
    const known = groups.get(option);
    if (known === undefined) groups.set(option, [state]);
    else known.push(state);
  });
  return groups;
}

/** One link's work: the starts of every parent state that go with a child, by cell. */
class Message {
  readonly out: readonly Cells[];
  private spare: SlotBits;

  constructor(
    private readonly prepared: PreparedChain,
    private readonly region: Region,
    private readonly link: Link,
    private readonly cells: readonly Cells[],
  ) {
    const { child, parent } = link;
    this.spare = prepared.pool.take();
    this.out = region.states[parent]!.map(() => new Map<number, SlotBits>());
    const parents = [...statesByOption(region, parent)].map(([option, states]) => ({
      option,
      states,
      starts: this.joined(states),
    }));
    for (const [option, states] of statesByOption(region, child)) {
      const union = this.union(states);
      for (const to of parents) this.between(option, states, union, to);
    }
    for (const own of this.out) prune(own, region.words[parent]!);
  }

  /** Starts of several parent states together. */
  private joined(states: readonly number[]): SlotBits {
    const { parent } = this.link;
    const out = this.prepared.pool.take();
    for (const state of states) addWords(out, this.region.starts[parent]![state]!, this.region.words[parent]!);
    return out;
  }

  /** Cells of several child states together. */
  private union(states: readonly number[]): Cells {
    const { pool } = this.prepared;
    const words = this.region.words[this.link.child]!;
    const union: Cells = new Map();
    for (const state of states) {
      for (const [cell, bits] of this.cells[state]!) {
        if (!union.has(cell)) union.set(cell, pool.take());
        addTo(union, cell, bits, words);
      }
    }
    return prune(union, words);
  }

  /** From one child option to one parent option. */
  private between(
    option: number,
    states: readonly number[],
    union: Cells,
    to: { readonly option: number; readonly states: readonly number[]; readonly starts: SlotBits },
  ): void {
    const { region, link } = this;
    const pieces = piecesFor(link, option, to.option);
    const children = region.states[link.child]!;
    const parents = region.states[link.parent]!;
    const moves = children[states[0]!]!.clinic === parents[to.states[0]!]!.clinic ? 0 : CLINIC;
    for (const state of states) {
      const same = to.states.find((parent) => parents[parent]!.clinician === children[state]!.clinician);
      if (same === undefined) continue;
      for (const [cell, bits] of this.cells[state]!) this.hit(same, cell + moves, this.image(pieces, bits, to.starts));
    }
    for (const [cell, bits] of union) {
      let image: SlotBits | null = null;
      for (const parent of to.states) {
        // A clinician whom only the same clinician could have preceded has had that image already.
        if (states.length === 1 && parents[parent]!.clinician === children[states[0]!]!.clinician) continue;
        image ??= this.image(pieces, bits, to.starts);
        this.hit(parent, cell + moves + CLINICIAN, image);
      }
    }
  }

  private image(pieces: readonly Piece[], bits: SlotBits, parents: SlotBits): SlotBits {
    const image = this.prepared.pool.take();
    for (const piece of pieces) addPartners(this.link, piece, bits, parents, image);
    return image;
  }

  private hit(parent: number, cell: number, image: SlotBits): void {
    const { region, link, prepared } = this;
    const words = region.words[link.parent]!;
    const starts = region.starts[link.parent]![parent]!;
    this.spare = addCommon(this.out[parent]!, cell, image, starts, words, this.spare, prepared.pool);
  }
}

/** The cells of the whole tree; cells that a known vector covers are left out. */
export function layersOf(prepared: PreparedChain, region: Region, known: readonly ChainVector[]): Layers {
  const { pool } = prepared;
  const cells: Cells[][] = region.states.map((list, visit) =>
    list.map((_, state) => ownCells(prepared, region, visit, state)),
  );
  const messages: (readonly Cells[])[] = [];
  const earliest = new EarliestDelivery(prepared, region);
  const isCovered = (visit: number, cell: number, bits: SlotBits): boolean =>
    known.length > 0 && covered(known, earliest.day(visit, nextBit(bits, 0)), cell);
  for (const link of prepared.links) {
    const words = region.words[link.parent]!;
    const { out } = new Message(prepared, region, link, cells[link.child]!);
    messages.push(out);
    let spare = pool.take();
    cells[link.parent] = cells[link.parent]!.map((own, state) => {
      const joined: Cells = new Map();
      for (const [cell, bits] of own) {
        for (const [other, partners] of out[state]!) {
          spare = addCommon(joined, cell + other, bits, partners, words, spare, pool);
        }
      }
      prune(joined, words);
      for (const [cell, bits] of joined) if (isCovered(link.parent, cell, bits)) joined.delete(cell);
      return joined;
    });
  }
  return { cells, messages };
}
