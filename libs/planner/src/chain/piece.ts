import {
  addRange,
  and,
  andInto,
  emptyBits,
  hasBit,
  isEmpty,
  nextCommonBit,
  previousCommonBit,
  setBit,
  setRange,
} from './bits.js';
import type { SlotBits } from './model.js';
import { firstAtLeast, lastAtMost } from './monotone.js';
import { sweepDown, sweepUp, type Net } from './net.js';

/**
 * Everything that joins the starts of two visits: `(t, y)` is possible if and only if `t` is in `from`, `y` is in `to`
 * and `lo[t] <= y <= hi[t]`. Both tables never decrease.
 */
export interface Piece {
  readonly lo: Int32Array;
  readonly hi: Int32Array;
  /** `null` when every slot is in. */
  readonly from: SlotBits | null;
  readonly to: SlotBits | null;
  /** Earliest return of laboratory work by start of the earlier visit; `null` when none is made in between. */
  readonly earliestReturn: Int32Array | null;
  /** Runs of slots with equal bounds as `first, last, lo, hi`; `null` when there are too many to pay. */
  readonly steps: Int32Array | null;
}

function stepsOf(lo: Int32Array, hi: Int32Array): Int32Array | null {
  const most = lo.length >> 5;
  const steps: number[] = [];
  for (let first = 0; first < lo.length;) {
    let last = first;
    while (last + 1 < lo.length && lo[last + 1] === lo[first] && hi[last + 1] === hi[first]) last++;
    steps.push(first, last, lo[first]!, hi[first]!);
    if (steps.length >> 2 > most) return null;
    first = last + 1;
  }
  return Int32Array.from(steps);
}

/** A piece from bounds by start slot; `null` for no bound. */
export function lagPiece(slotCount: number, lo: Int32Array | null, hi: Int32Array | null): Piece {
  const low = lo ?? new Int32Array(slotCount);
  const high = hi ?? new Int32Array(slotCount).fill(slotCount - 1);
  return { lo: low, hi: high, from: null, to: null, earliestReturn: null, steps: stepsOf(low, high) };
}

function joinBits(left: SlotBits | null, right: SlotBits | null): SlotBits | null {
  if (left === null || right === null) return left ?? right;
  return and(left, right);
}

/** Both pieces at once. Work that has to be back from both is back with the later of the two. */
export function bothPieces(left: Piece, right: Piece): Piece {
  const slotCount = left.lo.length;
  const lo = new Int32Array(slotCount);
  const hi = new Int32Array(slotCount);
  for (let slot = 0; slot < slotCount; slot++) {
    lo[slot] = Math.max(left.lo[slot]!, right.lo[slot]!);
    hi[slot] = Math.min(left.hi[slot]!, right.hi[slot]!);
  }
  let earliestReturn = left.earliestReturn ?? right.earliestReturn;
  if (left.earliestReturn !== null && right.earliestReturn !== null) {
    const other = right.earliestReturn;
    earliestReturn = left.earliestReturn.map((value, slot) => Math.max(value, other[slot]!));
  }
  return {
    lo,
    hi,
    from: joinBits(left.from, right.from),
    to: joinBits(left.to, right.to),
    earliestReturn,
    steps: stepsOf(lo, hi),
  };
}

/**
 * Projects a net on two of its nodes, exactly: a relation closed under minimum, maximum and hence median is what its
 * smallest and largest partners say.
 *
 * @param wanted starts of `from` that are of interest. Only the latest partners are confined to them: where work is
 * limited to the minute these change with every slot. The earliest ones are the earliest return of the work as well.
 * @returns `null` when the net has no solution
 */
export function projectNet(net: Net, from: number, to: number, wanted: SlotBits): Piece | null {
  const { slotCount } = net;
  const lo = new Int32Array(slotCount).fill(-1);
  const hi = new Int32Array(slotCount).fill(-1);
  const fromBits = emptyBits(slotCount);
  const toBits = emptyBits(slotCount);
  sweepUp(net, from, (first, last, values) => {
    lo.fill(values[to]!, first, last + 1);
    setRange(fromBits, first, last);
  });
  andInto(fromBits, net.domains[from]!);
  andInto(fromBits, wanted);
  if (isEmpty(fromBits)) return null;
  const confined = { ...net, domains: net.domains.map((bits, node) => (node === from ? fromBits : bits)) };
  sweepDown(confined, from, (first, last, values) => {
    hi.fill(values[to]!, first, last + 1);
  });
  sweepUp(net, to, (first, last) => {
    setRange(toBits, first, last);
  });
  andInto(toBits, net.domains[to]!);
  // Slots outside the sets are never used; they take a neighbour's bound so that the tables stay monotone.
  for (let slot = slotCount - 1, seen = slotCount; slot >= 0; slot--) {
    if (lo[slot] === -1) lo[slot] = seen;
    else seen = lo[slot]!;
  }
  for (let slot = 0, seen = -1; slot < slotCount; slot++) {
    if (hi[slot] === -1) hi[slot] = seen;
    else seen = hi[slot]!;
  }
  return { lo, hi, from: fromBits, to: toBits, earliestReturn: null, steps: stepsOf(lo, hi) };
}

/** Whether the starts `t` and `y` go together. */
export function joins(piece: Piece, t: number, y: number): boolean {
  return (
    piece.lo[t]! <= y &&
    y <= piece.hi[t]! &&
    (piece.from === null || hasBit(piece.from, t)) &&
    (piece.to === null || hasBit(piece.to, y))
  );
}

/** First of the earlier visit's `starts` that goes with the later visit's start `y`, or -1. */
export function firstBefore({ lo, hi, from, to }: Piece, starts: SlotBits, y: number): number {
  if (to !== null && !hasBit(to, y)) return -1;
  const t = nextCommonBit(
    starts,
    from,
    firstAtLeast((slot) => hi[slot]!, y, 0, hi.length),
  );
  return t >= 0 && lo[t]! <= y ? t : -1;
}

/** Last of the earlier visit's `starts` that goes with the later visit's start `y`, or -1. */
export function lastBefore({ lo, hi, from, to }: Piece, starts: SlotBits, y: number): number {
  if (to !== null && !hasBit(to, y)) return -1;
  const t = previousCommonBit(
    starts,
    from,
    lastAtMost((slot) => lo[slot]!, y, 0, lo.length - 1),
  );
  return t >= 0 && hi[t]! >= y ? t : -1;
}

/** First of the later visit's `starts` that goes with the earlier visit's start `t`, or -1. */
export function firstAfter({ lo, hi, from, to }: Piece, starts: SlotBits, t: number): number {
  if (from !== null && !hasBit(from, t)) return -1;
  const y = nextCommonBit(starts, to, lo[t]!);
  return y >= 0 && y <= hi[t]! ? y : -1;
}

/** Adds to `out` every start of the later visit that goes with one in `starts`. */
export function addImage(starts: SlotBits, piece: Piece, out: SlotBits): void {
  const { from, to, lo, hi, steps } = piece;
  let first = 0;
  let last = -1;
  if (steps === null) {
    for (let slot = nextCommonBit(starts, from, 0); slot >= 0; slot = nextCommonBit(starts, from, slot + 1)) {
      const [least, most] = [lo[slot]!, hi[slot]!];
      if (least > most) continue;
      if (least > last + 1) {
        addRange(out, first, last, to, null);
        first = least;
      }
      if (most > last) last = most;
    }
    addRange(out, first, last, to, null);
    return;
  }
  // Steps without a start are jumped over by looking up where the next start lies.
  let slot = nextCommonBit(starts, from, 0);
  for (let at = 0; at < steps.length && slot >= 0; at += 4) {
    if (slot > steps[at + 1]!) continue;
    const least = steps[at + 2]!;
    const most = steps[at + 3]!;
    slot = nextCommonBit(starts, from, steps[at + 1]! + 1);
    if (least > most) continue;
    if (least > last + 1) {
      addRange(out, first, last, to, null);
      first = least;
    }
    if (most > last) last = most;
  }
  addRange(out, first, last, to, null);
}

/** Adds to `out` those of `candidates` (starts of the earlier visit) that go with a start in `starts`. */
export function addPreimage(starts: SlotBits, piece: Piece, candidates: SlotBits, out: SlotBits): void {
  const { from, to, lo, hi, steps } = piece;
  // The bounds never decrease, so neither does the first partner.
  let partner = nextCommonBit(starts, to, 0);
  if (partner < 0) return;
  if (steps === null) {
    for (let slot = nextCommonBit(candidates, from, 0); slot >= 0; slot = nextCommonBit(candidates, from, slot + 1)) {
      if (partner < lo[slot]!) partner = nextCommonBit(starts, to, lo[slot]!);
      if (partner < 0) return;
      if (partner <= hi[slot]!) setBit(out, slot);
    }
    return;
  }
  for (let at = 0; at < steps.length && partner >= 0; at += 4) {
    if (partner < steps[at + 2]!) partner = nextCommonBit(starts, to, steps[at + 2]!);
    if (partner >= 0 && partner <= steps[at + 3]!) addRange(out, steps[at]!, steps[at + 1]!, candidates, from);
  }
}
