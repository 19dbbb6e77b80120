import { addSpan, type BusyEvent } from './busy-event.js';
import type { Span } from './moments.js';
import { wallTimes } from './recurrence.js';

const DAY_MS = 86_400_000;

/** One instance of an event; `recurrenceMs` is its original start, null for an event that happens once. */
export interface Occurrence {
  readonly recurrenceMs: number | null;
  readonly startMs: number;
  readonly endMs: number;
}

interface Bounds {
  readonly startMs: number;
  readonly endMs: number;
}

/**
 * The blocking occurrences of all events of one UID: a series with its exceptions, or a single event.
 *
 * @param events every VEVENT of that UID; of two that describe the same thing the later revision counts
 */
export function occurrencesOf(events: readonly BusyEvent[], window: Bounds): Occurrence[] {
  const latest = new Map<number | 'series', BusyEvent>();
  for (const event of events) {
    const key = event.replaces?.startMs ?? 'series';
    const known = latest.get(key);
    if (known === undefined || isLaterRevision(event, known)) latest.set(key, event);
  }
  const series = latest.get('series');
  const exceptions = [...latest.values()].filter((event) => event !== series);
  const occurrences = exceptions.filter(({ blocks }) => blocks).map(occurrenceOfException);
  if (series !== undefined) {
    const replaced = new Set(exceptions.map((event) => event.replaces?.startMs));
    const changes = exceptions
      .filter((event) => event.replaces?.andFuture === true)
      .sort((one, other) => (one.replaces?.startMs ?? 0) - (other.replaces?.startMs ?? 0));
    for (const instance of instancesOf(series, changes, window)) {
      if (replaced.has(instance.startMs)) continue;
      const change = changes.findLast((event) => (event.replaces?.startMs ?? 0) < instance.startMs);
      if ((change ?? series).blocks) occurrences.push(occurrenceOf(series, instance, change));
    }
  }
  return occurrences.filter(
    ({ startMs, endMs }) => startMs < endMs && endMs > window.startMs && startMs < window.endMs,
  );
}

interface Instance {
  readonly startMs: number;
  readonly span: Span;
}

function* instancesOf(series: BusyEvent, changes: readonly BusyEvent[], window: Bounds): Generator<Instance, void> {
  const seen = new Set<number>();
  const fresh = (instance: Instance) => {
    const known = seen.has(instance.startMs);
    seen.add(instance.startMs);
    return !known && !series.excludes(instance.startMs, series.zone.wallOf(instance.startMs));
  };
  // An instance outside the window may still reach into it, through its length or through a later shift.
  const reachMs =
    2 * DAY_MS +
    Math.max(...[series, ...changes].map(({ span }) => span.days * DAY_MS + span.exactMs)) +
    Math.max(0, ...changes.map((change) => Math.abs(shiftMs(series, change))));
  for (const startMs of recurringStarts(series, window.startMs - reachMs, window.endMs + reachMs)) {
    if (fresh({ startMs, span: series.span })) yield { startMs, span: series.span };
  }
  for (const instance of series.extra) if (fresh(instance)) yield instance;
}

/** DTSTART always counts as the first instance; a time that the zone skips neither happens nor counts. */
function* recurringStarts(series: BusyEvent, fromMs: number, endMs: number): Generator<number, void> {
  yield series.startMs;
  const { rule, zone, startWallMs } = series;
  if (rule === null) return;
  const isPast = (instantMs: number, wallMs: number) => {
    if (rule.until === null) return false;
    if (rule.until.kind === 'utc') return instantMs > rule.until.wallMs;
    return wallMs >= rule.until.wallMs + (rule.until.kind === 'date' ? DAY_MS : 1);
  };
  // With COUNT every instance since the first has to be counted.
  const fromWallMs = rule.count === null ? fromMs - DAY_MS : startWallMs;
  let counted = 1;
  for (const wallMs of wallTimes(rule.rrule, startWallMs, fromWallMs, endMs + DAY_MS)) {
    if (wallMs === startWallMs) continue;
    if (rule.count !== null && counted >= rule.count) return;
    const { instantMs, skipped } = zone.place(wallMs);
    if (isPast(instantMs, wallMs)) return;
    if (skipped) continue;
    counted += 1;
    yield instantMs;
  }
}

function occurrenceOf(series: BusyEvent, instance: Instance, change: BusyEvent | undefined): Occurrence {
  const { zone } = series;
  const wallMs = zone.wallOf(instance.startMs) + (change === undefined ? 0 : shiftMs(series, change));
  // Placing the wall clock again would turn the second of two equal times into the first.
  const startMs = change === undefined ? instance.startMs : zone.place(wallMs).instantMs;
  const span = change?.span ?? instance.span;
  const endMs = span.days === 0 ? startMs + span.exactMs : addSpan(zone, wallMs, span);
  const repeats = series.rule !== null || series.extra.length > 0;
  return { recurrenceMs: repeats ? instance.startMs : null, startMs, endMs };
}

function occurrenceOfException(event: BusyEvent): Occurrence {
  const endMs = addSpan(event.zone, event.startWallMs, event.span);
  return { recurrenceMs: event.replaces?.startMs ?? null, startMs: event.startMs, endMs };
}

/** How far a change of "this and all later instances" moves each of them on the wall clock. */
function shiftMs(series: BusyEvent, change: BusyEvent): number {
  return series.zone.wallOf(change.startMs) - series.zone.wallOf(change.replaces?.startMs ?? change.startMs);
}

function isLaterRevision(event: BusyEvent, known: BusyEvent): boolean {
  return event.sequence !== known.sequence ? event.sequence > known.sequence : event.stampMs >= known.stampMs;
}
