/**
 * A date or local date-time as written. `wallMs` is the wall clock read as if it were UTC, so that calendar
 * arithmetic on it never meets a clock change and never asks the host's zone.
 */
export interface Moment {
  readonly wallMs: number;
  readonly kind: 'date' | 'local' | 'utc';
}

/** Reads a jCal date or date-time (RFC 7265, section 3.6.4); null when it is none or the day does not exist. */
export function parseMoment(value: unknown): Moment | null {
  if (typeof value !== 'string') return null;
  const match = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d):(\d\d)(Z)?)?$/.exec(value);
  if (match === null) return null;
  const [year, month, day, hour, minute, second] = match.slice(1, 7).map((part) => Number(part || 0));
  const wall = new Date(0);
  wall.setUTCFullYear(year ?? 0, (month ?? 0) - 1, day);
  // A leap second is read as the second before it, as clocks here know none.
  wall.setUTCHours(hour ?? 0, minute, Math.min(second ?? 0, 59));
  const exists = wall.toISOString().slice(0, 10) === value.slice(0, 10) && (hour ?? 0) < 24 && (minute ?? 0) < 60;
  // Years before the Gregorian calendar are typing errors, or a maker's "for ever".
  if ((year ?? 0) < 1583) return null;
  if (!exists || (second ?? 0) > 60) return null;
  return { wallMs: wall.getTime(), kind: match[4] === undefined ? 'date' : match[7] === 'Z' ? 'utc' : 'local' };
}

/** Wall-clock milliseconds as local text of minutes, such as 2027-01-28T09:20. */
export function localText(wallMs: number): string {
  return new Date(wallMs).toISOString().slice(0, 16);
}

/** A length of time: `days` on the calendar first, then `exactMs` on the clock (RFC 5545, section 3.3.6). */
export interface Span {
  readonly days: number;
  readonly exactMs: number;
}

const DURATION = /^([+-])?P(?:(\d+)W|(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?)$/;

/** Reads a DURATION that is not negative; null when it is none. */
export function parseSpan(value: unknown): Span | null {
  const match = typeof value === 'string' ? DURATION.exec(value) : null;
  if (match === null || match[1] === '-' || match.slice(2).every((part: string | undefined) => part === undefined))
    return null;
  const [weeks, days, hours, minutes, seconds] = match.slice(2).map((part: string | undefined) => Number(part ?? 0));
  return {
    days: (weeks ?? 0) * 7 + (days ?? 0),
    exactMs: (((hours ?? 0) * 60 + (minutes ?? 0)) * 60 + (seconds ?? 0)) * 1000,
  };
}
