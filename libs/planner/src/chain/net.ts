import { nextBit, previousBit } from './bits.js';
import type { SlotBits } from './model.js';

/** `lo[x_from] <= x_to <= hi[x_from]`, tables by start slot of `from`. */
export interface NetArc {
  readonly from: number;
  readonly to: number;
  readonly lo: Int32Array | null;
  readonly hi: Int32Array | null;
}

/** Nodes with start domains, joined by arcs whose bounds never decrease. */
export interface Net {
  readonly domains: readonly SlotBits[];
  readonly arcs: readonly NetArc[];
}

/** Raises `values` to the smallest solution at or above them; false when there is none. */
function raise(net: Net, values: Int32Array): boolean {
  for (let changed = true; changed;) {
    changed = false;
    for (const arc of net.arcs) {
      const from = values[arc.from]!;
      if (arc.lo !== null && arc.lo[from]! > values[arc.to]!) {
        const next = nextBit(net.domains[arc.to]!, arc.lo[from]!);
        if (next < 0) return false;
        values[arc.to] = next;
        changed = true;
      }
      if (arc.hi !== null && arc.hi[from]! < values[arc.to]!) {
        let next = from;
        do {
          next = nextBit(net.domains[arc.from]!, next + 1);
          if (next < 0) return false;
        } while (arc.hi[next]! < values[arc.to]!);
        values[arc.from] = next;
        changed = true;
      }
    }
  }
  return true;
}

/** Lowers `values` to the largest solution at or below them; false when there is none. */
function lower(net: Net, values: Int32Array): boolean {
  for (let changed = true; changed;) {
    changed = false;
    for (const arc of net.arcs) {
      const from = values[arc.from]!;
      if (arc.hi !== null && arc.hi[from]! < values[arc.to]!) {
        const next = previousBit(net.domains[arc.to]!, arc.hi[from]!);
        if (next < 0) return false;
        values[arc.to] = next;
        changed = true;
      }
      if (arc.lo !== null && arc.lo[from]! > values[arc.to]!) {
        let next = from;
        do {
          next = previousBit(net.domains[arc.from]!, next - 1);
          if (next < 0) return false;
        } while (arc.lo[next]! > values[arc.to]!);
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

/** Calls `report` for every value of node `driven` that lies in a solution, rising, with the smallest such solution. */
export function sweepUp(net: Net, driven: number, report: (slot: number, values: Int32Array) => void): void {
  const values = smallestSolution(net);
  if (values === null) return;
  const own = net.arcs.filter((arc) => arc.from === driven || arc.to === driven);
  const holds = (): boolean =>
    own.every(
      (arc) =>
        (arc.lo === null || arc.lo[values[arc.from]!]! <= values[arc.to]!) &&
        (arc.hi === null || arc.hi[values[arc.from]!]! >= values[arc.to]!),
    );
  for (let slot = values[driven]!; slot >= 0;) {
    values[driven] = slot;
    if (!holds() && !raise(net, values)) return;
    if (values[driven] === slot) {
      report(slot, values);
      slot = nextBit(net.domains[driven]!, slot + 1);
    } else slot = values[driven]!;
  }
}

/** Mirror image of {@link sweepUp}: falling, with the largest solution. */
export function sweepDown(net: Net, driven: number, report: (slot: number, values: Int32Array) => void): void {
  const values = new Int32Array(net.domains.length);
  for (let node = 0; node < values.length; node++) {
    values[node] = previousBit(net.domains[node]!, (net.domains[node]!.length << 5) - 1);
    if (values[node]! < 0) return;
  }
  if (!lower(net, values)) return;
  const own = net.arcs.filter((arc) => arc.from === driven || arc.to === driven);
  const holds = (): boolean =>
    own.every(
      (arc) =>
        (arc.lo === null || arc.lo[values[arc.from]!]! <= values[arc.to]!) &&
        (arc.hi === null || arc.hi[values[arc.from]!]! >= values[arc.to]!),
    );
  for (let slot = values[driven]!; slot >= 0;) {
    values[driven] = slot;
    if (!holds() && !lower(net, values)) return;
    if (values[driven] === slot) {
      report(slot, values);
      slot = previousBit(net.domains[driven]!, slot - 1);
    } else slot = values[driven]!;
  }
}
