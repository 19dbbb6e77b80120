import { nextBit, previousBit } from './bits.js';
import type { SlotBits } from './model.js';
import { firstAtLeast, lastAtMost } from './monotone.js';

/** `lo[at] <= x_to <= hi[at]`, read at the start of `from`, or at its end where `end` gives one. */
export interface NetArc {
  readonly from: number;
  readonly to: number;
  readonly lo: Int32Array | null;
  readonly hi: Int32Array | null;
  /** End slot by start slot of `from`, so that tables by end need not be written out by start; `null` for tables by start. */
  readonly end: Int32Array | null;
}

/** Nodes with start domains, joined by arcs whose bounds never decrease. */
export interface Net {
  readonly domains: readonly SlotBits[];
  readonly arcs: readonly NetArc[];
  readonly slotCount: number;
}

/** Earliest start of an arc's target; `slotCount` when the origin does not fit the axis. */
function earliest({ lo, end }: NetArc, start: number, slotCount: number): number {
  if (end === null) return lo![start]!;
  const at = end[start]!;
  return at > slotCount ? slotCount : lo![at]!;
}

/** Latest start of an arc's target. */
function latest({ hi, end }: NetArc, start: number, slotCount: number): number {
  if (end === null) return hi![start]!;
  const at = end[start]!;
  return at > slotCount ? slotCount - 1 : hi![at]!;
}

/** First start of an arc's origin, from `start` on, that lets the target start as late as `target`. */
function firstAllowing(arc: NetArc, target: number, start: number, slotCount: number): number {
  return firstAtLeast((slot) => latest(arc, slot, slotCount), target, start, slotCount);
}

/** Last start of an arc's origin, up to `start`, that lets the target start as early as `target`. */
function lastAllowing(arc: NetArc, target: number, start: number, slotCount: number): number {
  return lastAtMost((slot) => earliest(arc, slot, slotCount), target, 0, start);
}

/** Raises `values` to the smallest solution at or above them; false when there is none. */
function raise({ arcs, domains, slotCount }: Net, values: Int32Array): boolean {
  for (let changed = true; changed;) {
    changed = false;
    for (const arc of arcs) {
      const from = values[arc.from]!;
      if (arc.lo !== null) {
        const least = earliest(arc, from, slotCount);
        if (least > values[arc.to]!) {
          const next = nextBit(domains[arc.to]!, least);
          if (next < 0) return false;
          values[arc.to] = next;
          changed = true;
        }
      }
      if (arc.hi !== null && latest(arc, from, slotCount) < values[arc.to]!) {
        const next = nextBit(domains[arc.from]!, firstAllowing(arc, values[arc.to]!, from, slotCount));
        if (next < 0) return false;
        values[arc.from] = next;
        changed = true;
      }
    }
  }
  return true;
}

/** Lowers `values` to the largest solution at or below them; false when there is none. */
function lower({ arcs, domains, slotCount }: Net, values: Int32Array): boolean {
  for (let changed = true; changed;) {
    changed = false;
    for (const arc of arcs) {
      const from = values[arc.from]!;
      if (arc.hi !== null) {
        const most = latest(arc, from, slotCount);
        if (most < values[arc.to]!) {
          const next = previousBit(domains[arc.to]!, most);
          if (next < 0) return false;
          values[arc.to] = next;
          changed = true;
        }
      }
      if (arc.lo !== null && earliest(arc, from, slotCount) > values[arc.to]!) {
        const next = previousBit(domains[arc.from]!, lastAllowing(arc, values[arc.to]!, from, slotCount));
        if (next < 0) return false;
        values[arc.from] = next;
        changed = true;
      }
    }
  }
  return true;
}

/**
 * The smallest solution: every node at its lowest possible value at once.
 *
 * It exists because the componentwise minimum of two solutions is one when no arc's bounds decrease.
 *
 * @returns start slot per node, or `null` when there is no solution
 */
export function smallestSolution(net: Net): Int32Array | null {
  const values = new Int32Array(net.domains.length);
  for (let node = 0; node < values.length; node++) {
    values[node] = nextBit(net.domains[node]!, 0);
    if (values[node]! < 0) return null;
  }
  return raise(net, values) ? values : null;
}

/**
 * Every value of node `driven` that lies in a solution, rising, with the smallest such solution, in runs: all the other
 * values stay the same from `first` to `last`, both included. Of a run only what the domain holds is meant.
 */
export function sweepUp(
  net: Net,
  driven: number,
  report: (first: number, last: number, values: Int32Array) => void,
): void {
  const { arcs, domains, slotCount } = net;
  const values = smallestSolution(net);
  if (values === null) return;
  const own = arcs.filter((arc) => (arc.from === driven && arc.lo !== null) || (arc.to === driven && arc.hi !== null));
  for (;;) {
    const first = values[driven]!;
    let last = slotCount - 1;
    for (const arc of own) {
      if (arc.to === driven) last = Math.min(last, latest(arc, values[arc.from]!, slotCount));
      else {
        const limit = values[arc.to]!;
        if (earliest(arc, last, slotCount) > limit) last = lastAllowing(arc, limit, last, slotCount);
      }
    }
    report(first, last, values);
    const next = nextBit(domains[driven]!, last + 1);
    if (next < 0) return;
    values[driven] = next;
    if (!raise(net, values)) return;
  }
}

/** Mirror image of {@link sweepUp}: falling runs, with the largest solution. */
export function sweepDown(
  net: Net,
  driven: number,
  report: (first: number, last: number, values: Int32Array) => void,
): void {
  const { arcs, domains, slotCount } = net;
  const values = new Int32Array(domains.length);
  for (let node = 0; node < values.length; node++) {
    values[node] = previousBit(domains[node]!, slotCount - 1);
    if (values[node]! < 0) return;
  }
  if (!lower(net, values)) return;
  const own = arcs.filter((arc) => (arc.from === driven && arc.hi !== null) || (arc.to === driven && arc.lo !== null));
  for (;;) {
    const last = values[driven]!;
    let first = 0;
    for (const arc of own) {
      if (arc.to === driven) first = Math.max(first, earliest(arc, values[arc.from]!, slotCount));
      else {
        const limit = values[arc.to]!;
        if (latest(arc, first, slotCount) < limit) first = firstAllowing(arc, limit, first, slotCount);
      }
    }
    report(first, last, values);
    const next = previousBit(domains[driven]!, first - 1);
    if (next < 0) return;
    values[driven] = next;
    if (!lower(net, values)) return;
  }
}
