const DAY_MS = 86_400_000;

const formatters = new Map<string, Intl.DateTimeFormat>();

function wallFormatter(zone: string): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  formatters.set(zone, made);
  return made;
}

/** Wall-clock reading of an instant in a zone, as if it were UTC, in milliseconds. */
function wallMs(ms: number, zone: string): number {
  const parts: Record<string, number> = {};
  for (const { type, value } of wallFormatter(zone).formatToParts(ms)) parts[type] = Number(value);
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts;
  return Date.UTC(year, month - 1, day, hour, minute, second);
}

/** Offset of a zone from UTC at an instant, in milliseconds, east positive. */
export function offsetMs(ms: number, zone: string): number {
  return wallMs(ms, zone) - Math.floor(ms / 1000) * 1000;
}

/** Calendar date (`2027-01-28`) of an instant in a zone. */
export function localDateOf(ms: number, zone: string): string {
  return new Date(wallMs(ms, zone)).toISOString().slice(0, 10);
}

/** The instant at which a calendar date begins in a zone; the first instant of the day where midnight does not occur. */
export function startOfDayMs(date: string, zone: string): number {
  const asUtc = Date.parse(`${date}T00:00:00Z`);
  const before = asUtc - offsetMs(asUtc - DAY_MS, zone);
  const after = asUtc - offsetMs(asUtc + DAY_MS, zone);
  return [before, after].find((ms) => wallMs(ms, zone) === asUtc) ?? Math.max(before, after);
}

/** The date some days later (or earlier, when negative). */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Whole days from one calendar date to another; negative when that lies before. */
export function daysBetween(from: string, to: string): number {
  return (Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS;
}

/** Monday is 1, Sunday 7, as ISO 8601 numbers them. */
export function isoWeekday(date: string): number {
  const day = new Date(`${date}T00:00:00Z`).getUTCDay();
  return day === 0 ? 7 : day;
}

export const viewerZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;
