import type { CaseChain, CasePlanLabStep } from '@archwright/protocol';
import type { PlannedSegment } from '@archwright/records';

const GRID_MS = 5 * 60_000;

interface Part {
  readonly kind: PlannedSegment['kind'];
  readonly lengthMs: number;
}

/** A planned step on the time line: what is done when its place is taken, and when the work lies between. */
export function segmentsOf({ code, startMs, endMs, holds }: CasePlanLabStep, chain: CaseChain): PlannedSegment[] {
  const cuts = cutsOf(code, chain);
  const segments: PlannedSegment[] = [];
  const add = (kind: PlannedSegment['kind'], fromMs: number, untilMs: number, holdsPlace: boolean) => {
    const [startsAt, endsAt] = [new Date(fromMs).toISOString(), new Date(untilMs).toISOString()];
    if (untilMs > fromMs) segments.push({ kind, startsAt, endsAt, holdsPlace });
  };
  let at = startMs;
  let heldMs = 0;
  for (const held of holds) {
    add('set', at, held.startMs, false);
    at = held.startMs;
    for (const { kind, untilMs } of cuts) {
      // How far this part reaches into the held time at hand.
      const end = Math.min(held.endMs, at + Math.max(0, untilMs - heldMs));
      add(kind, at, end, true);
      heldMs += end - at;
      at = end;
    }
  }
  add('set', at, endMs, false);
  return segments;
}

/** Kinds of the parts that keep the place, by the held time at which each ends; the last one takes what is left. */
function cutsOf(code: string, chain: CaseChain): { kind: Part['kind']; untilMs: number }[] {
  const parts = (chain.steps.find((step) => step.code === code)?.segments ?? [])
    .filter(({ holdsPlace }) => holdsPlace)
    .map(({ kind, minutes }): Part => ({ kind, lengthMs: Math.ceil((minutes * 60_000) / GRID_MS) * GRID_MS }));
  let untilMs = 0;
  return parts.map(({ kind, lengthMs }, index) => {
    untilMs += lengthMs;
    return { kind, untilMs: index === parts.length - 1 ? Infinity : untilMs };
  });
}
