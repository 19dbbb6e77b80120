import { expandRule, RecurrenceRuleError } from '@archwright/calendar';
import { ComponentProblem, type CalendarProperty } from './content-lines.js';
import { localText, parseMoment, type Moment } from './moments.js';

const MINUTE_MS = 60_000;

/** A recurrence rule whose COUNT and UNTIL stand apart, because they ask for the event's own zone. */
export interface Recurrence {
  /** The RRULE value without COUNT and UNTIL. */
  readonly rrule: string;
  readonly count: number | null;
  readonly until: Moment | null;
}

/** @throws {ComponentProblem} naming the part of the rule that is wrong, and what it accepts */
export function readRecurrence({ line, text, values }: CalendarProperty): Recurrence {
  const { until, count } = values[0] as { until?: unknown; count?: number };
  const rrule = text
    .split(';')
    .filter((part) => !/^(COUNT|UNTIL)=/i.test(part))
    .join(';');
  try {
    // Read once over an empty window, so that a bad rule is found where it stands.
    expandRule({ zone: 'UTC', startsLocal: '2000-01-01T00:00', minutes: 1, rrule: text }, { startMs: 0, endMs: 0 });
  } catch (error) {
    if (!(error instanceof RecurrenceRuleError)) throw error;
    throw new ComponentProblem(line, error.message);
  }
  return { rrule, count: count ?? null, until: until === undefined ? null : parseMoment(until) };
}

/**
 * Wall-clock times of a rule, ascending, `fromWallMs <= time < endWallMs`, before COUNT and UNTIL.
 *
 * The rule is expanded as if in UTC, where no wall time is skipped or repeated; the caller places the times.
 */
export function wallTimes(rrule: string, startWallMs: number, fromWallMs: number, endWallMs: number): number[] {
  const secondsMs = startWallMs % MINUTE_MS;
  const rule = { zone: 'UTC', startsLocal: localText(startWallMs), minutes: 1, rrule };
  // Occurrences of one minute each: neighbours that were joined are told apart again minute by minute.
  return expandRule(rule, { startMs: fromWallMs, endMs: endWallMs }).flatMap(({ startMs, endMs }) =>
    Array.from({ length: (endMs - startMs) / MINUTE_MS }, (_, minute) => startMs + minute * MINUTE_MS + secondsMs),
  );
}
