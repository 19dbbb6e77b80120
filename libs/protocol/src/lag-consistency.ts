import type { PathPartKind } from './errors.js';
import type { TimeSpan, TreatmentPath } from './path-schema.js';

const DAY_MINUTES = 1440;

/** `to` starts at least `minutes` after `from` starts (negative: at most that much earlier). */
interface Bound {
  readonly from: string;
  readonly to: string;
  readonly minutes: number;
  readonly part: BoundPart;
}

interface BoundPart {
  readonly kind: PathPartKind;
  readonly code: string;
}

/**
 * Looks for minimum waits that no timetable could fit under a maximum, all clinics open day and night: a circle of bounds
 * with a positive sum. Days are read as kindly as possible (a minimum of 3 days as just over 2 × 24 h, a maximum as just under
 * 4 × 24 h), so that what is reported is impossible everywhere. Limits in lab working days are left out as maxima.
 *
 * @returns the part that closes the circle, null when the lags can be met
 */
export function findLagContradiction(path: TreatmentPath): BoundPart | null {
  const bounds = boundsOf(path);
  const earliest = new Map<string, number>();
  const nodes = new Set(bounds.flatMap((bound) => [bound.from, bound.to]));
  for (let round = 0; round <= nodes.size; round++) {
    let changed: BoundPart | null = null;
    for (const bound of bounds) {
      const start = (earliest.get(bound.from) ?? 0) + bound.minutes;
      if (start <= (earliest.get(bound.to) ?? 0)) continue;
      earliest.set(bound.to, start);
      changed = bound.part;
    }
    if (changed === null) return null;
    if (round === nodes.size) return changed;
  }
  return null;
}

function boundsOf(path: TreatmentPath): Bound[] {
  const length = new Map(path.visits.map((visit) => [visit.code, visit.chairMinutes.min]));
  for (const phase of path.labPhases) {
    for (const step of phase.steps) {
      length.set(
        step.code,
        step.segments.reduce((sum, segment) => sum + segment.minutes * step.singleArchFactor, 0),
      );
    }
  }
  const bounds: Bound[] = [];
  const add = (part: BoundPart, from: string, to: string, min: TimeSpan | null, max: TimeSpan | null) => {
    const fromEnd = length.get(from) ?? 0;
    bounds.push({ part, from, to, minutes: fromEnd + (min === null ? 0 : shortest(min)) });
    const limit = max === null ? null : longest(max);
    if (limit !== null) bounds.push({ part, from: to, to: from, minutes: -(fromEnd + limit) });
  };
  path.visits.forEach((visit, index) => {
    const next = path.visits[index + 1];
    if (next !== undefined) add({ kind: 'visit', code: next.code }, visit.code, next.code, null, null);
  });
  for (const phase of path.labPhases) {
    for (const step of phase.steps) {
      add({ kind: 'phase', code: phase.code }, step.code, phase.before, null, null);
      for (const before of step.after)
        add({ kind: 'step', code: step.code }, before.code, step.code, before.min, before.max);
    }
  }
  for (const lag of path.lags) add({ kind: 'lag', code: lag.code }, lag.from, lag.to, lag.min, lag.max);
  return bounds;
}

const shortest = (span: TimeSpan): number =>
  span.unit === 'minutes' ? span.amount : Math.max(0, span.amount - 1) * DAY_MINUTES;

function longest(span: TimeSpan): number | null {
  if (span.unit === 'minutes') return span.amount;
  return span.unit === 'calendar-days' ? (span.amount + 1) * DAY_MINUTES : null;
}
