import { CalendarNumberError, requireWhole } from './errors.js';
import { normalise, type Interval } from './intervals.js';
import { DAY_MS, MINUTE_MS, wallMs } from './local-date.js';
import { instancesOf } from './recurrence.js';
import { parseRecurrence, type RecurrenceRule } from './recurrence-rule.js';
import { place, requireZone, wallAt } from './zone.js';

/** Time that recurs by the wall clock of a place, such as opening hours or the departures of a courier. */
export interface LocalRule {
  /** IANA time zone. */
  readonly zone: string;
  /** First start, 'YYYY-MM-DDTHH:mm' (DTSTART). It counts only when it fits `rrule`, as RFC 5545 expects it to. */
  readonly startsLocal: string;
  /** Length by the wall clock, whole minutes. */
  readonly minutes: number;
  /** Value of an RRULE property; left out for a single occurrence. */
  readonly rrule?: string | undefined;
  /** Starts that don't take place (EXDATE); also strikes out an extra one. */
  readonly exceptLocal?: readonly string[] | undefined;
  /** Further starts (RDATE). */
  readonly extraLocal?: readonly string[] | undefined;
}

/** Longest length of one occurrence: a week. Longer openings are several occurrences. */
const LONGEST_MINUTES = 7 * 24 * 60;

/**
 * The time of a rule within a window.
 *
 * The rule is expanded on the wall clock and only then placed in its zone, so the zone of the host does not matter.
 * An instance whose start a clock change skips is dropped and does not count towards COUNT (RFC 5545, 3.3.10); of two
 * equal wall times the first counts (3.3.5). The end is the wall-clock end, unlike the exact duration of an iCalendar
 * event: a practice that opens 8:00-17:00 still closes at 17:00 on the day the clock changes. UNTIL includes an
 * instance that starts at it.
 *
 * @returns a normalised list, not cut at the window: each range shares time with it before ranges are joined
 * @throws {RecurrenceRuleError} when the rule is malformed or out of scope
 * @throws {CalendarTextError} when a time or the zone is not understood
 * @throws {CalendarNumberError} when the length is not 1 to 10,080 whole minutes
 */
export function expandRule(rule: LocalRule, window: Interval): Interval[] {
  const lengthMs = requireLengthMs(rule.minutes);
  const intervals: Interval[] = [];
  // An occurrence that began before the window may reach into it; a day more for a clock that was set back.
  for (const startMs of startsOf(rule, { startMs: window.startMs - lengthMs - DAY_MS, endMs: window.endMs })) {
    const endMs = place(wallAt(startMs, rule.zone) + lengthMs, rule.zone).ms;
    if (endMs > window.startMs) intervals.push({ startMs, endMs });
  }
  return normalise(intervals);
}

function requireLengthMs(minutes: number): number {
  requireWhole('The length of an occurrence in minutes', minutes, 1);
  if (minutes > LONGEST_MINUTES) {
    throw new CalendarNumberError('The length of an occurrence in minutes', minutes, 'at most 10080, a week');
  }
  return minutes * MINUTE_MS;
}

/**
 * Instants at which a rule starts, those in `[window.startMs, window.endMs)` only, ascending, each once.
 *
 * @throws {CalendarNumberError} when the window has no end, because a rule may have none either
 */
export function startsOf(rule: LocalRule, window: Interval): number[] {
  requireZone(rule.zone);
  for (const ms of [window.startMs, window.endMs]) {
    if (!Number.isFinite(ms)) throw new CalendarNumberError('An end of the window', ms, 'epoch milliseconds');
  }
  const struckOut = new Set((rule.exceptLocal ?? []).map(wallMs));
  const stated = (rule.extraLocal ?? []).map(wallMs);
  if (rule.rrule === undefined) stated.push(wallMs(rule.startsLocal));
  const starts = new Set<number>();
  for (const wall of stated) {
    if (!struckOut.has(wall)) starts.add(place(wall, rule.zone).ms);
  }
  for (const { wall, ms } of recurringStarts(rule, window)) {
    if (!struckOut.has(wall)) starts.add(ms);
  }
  return [...starts].filter((ms) => window.startMs <= ms && ms < window.endMs).sort((a, b) => a - b);
}

function recurringStarts({ zone, startsLocal, rrule }: LocalRule, window: Interval): { wall: number; ms: number }[] {
  if (rrule === undefined) return [];
  const firstWall = wallMs(startsLocal);
  const recurrence = parseRecurrence(rrule);
  // Offsets stay within a day of UTC, so a day around the window holds every wall time that may fall into it.
  const wallWindow = {
    startMs: recurrence.count === undefined ? window.startMs - DAY_MS : firstWall,
    endMs: window.endMs + DAY_MS,
  };
  const starts: { wall: number; ms: number }[] = [];
  for (const wall of instancesOf(recurrence, firstWall, wallWindow)) {
    const { ms, gapEndMs } = place(wall, zone);
    if (isPastUntil(recurrence, wall, ms) || starts.length === recurrence.count) break;
    if (gapEndMs === null) starts.push({ wall, ms });
  }
  return starts;
}

/** An UNTIL in UTC bounds the instant, one without Z the wall time. */
function isPastUntil({ until }: RecurrenceRule, wall: number, ms: number): boolean {
  return until !== undefined && (until.isUtc ? ms : wall) > until.ms;
}
