import { CalendarFileError } from '../errors.js';
import { readEvent, readFreeBusy, type BusyEvent, type ZoneLookup } from './busy-event.js';
import { ComponentProblem, splitComponents, type CalendarProblem, type RawComponent } from './content-lines.js';
import { occurrencesOf } from './series.js';
import { definedZone, namedZone, type Zone } from './zones.js';

/** Bookings stand on a five-minute grid in UTC; busy time is rounded outward to it. */
const GRID_MS = 5 * 60_000;
/** Project defaults: far above a person's calendar, low enough to answer in seconds. */
const MAX_CHARACTERS = 10_000_000;
const MAX_BUSY_TIMES = 50_000;

/** Time during which the imported resource cannot be booked. Nothing of the event's title is kept. */
export interface BusyTime {
  /** With `recurrenceId` the stable key of this time, so that a second import changes nothing twice. */
  readonly uid: string;
  /** Original start of the instance, ISO 8601 in UTC; null for an event that happens once. */
  readonly recurrenceId: string | null;
  readonly startMs: number;
  readonly endMs: number;
}

/**
 * Reads an iCalendar file (RFC 5545) as busy times of one chair or person.
 *
 * Recurrences, RDATE, EXDATE and changed instances are worked out in the event's own zone; floating times and whole
 * days stand in the resource's zone. Transparent and cancelled events don't block. A component that cannot be
 * understood is left out and reported with its line; the rest loads.
 *
 * @param zone IANA name of the resource's zone
 * @param window half-open; only busy times that reach into it are returned, whole
 * @returns busy times by start; they may overlap each other, so unite them before they claim a resource
 * @throws {CalendarFileError} when the file as a whole is no calendar, is cut off or is too large
 */
export function readBusyTimes(
  text: string,
  { zone, window }: { zone: string; window: { startMs: number; endMs: number } },
): { busy: BusyTime[]; problems: CalendarProblem[] } {
  if (text.length > MAX_CHARACTERS) {
    throw new CalendarFileError(
      'too-large',
      `The calendar has ${String(text.length)} characters. Accepted: at most ${String(MAX_CHARACTERS)}; export a shorter period.`,
    );
  }
  const home = namedZone(zone);
  if (home === null) {
    throw new CalendarFileError('zone', `"${zone}" is not an IANA time zone. Accepted: a name such as Europe/London.`);
  }
  const { components, problems } = splitComponents(text.replace(/^\uFEFF/, ''));
  const all = <Result>(name: string, reader: (component: RawComponent) => Result): Result[] =>
    components.flatMap((component) => {
      if (component.name !== name) return [];
      try {
        return [reader(component)];
      } catch (error) {
        if (!(error instanceof ComponentProblem)) throw error;
        problems.push({ line: error.line, component: name, problem: error.message });
        return [];
      }
    });

  const defined = new Map<string, Zone>();
  for (const known of all('VTIMEZONE', (component) => definedZone(component, window.endMs))) {
    defined.set(known.id, known.zone);
  }
  const zones = zoneLookup(home, defined);
  const byUid = new Map<string, BusyEvent[]>();
  for (const event of all('VEVENT', (component) => readEvent(component, zones))) {
    byUid.set(event.uid, [...(byUid.get(event.uid) ?? []), event]);
  }

  const busy: BusyTime[] = [];
  const add = (uid: string, recurrenceMs: number | null, startMs: number, endMs: number): void => {
    if (busy.length >= MAX_BUSY_TIMES) {
      throw new CalendarFileError(
        'too-many-times',
        `More than ${String(MAX_BUSY_TIMES)} busy times lie in the window; shorten it.`,
      );
    }
    busy.push({
      uid,
      recurrenceId: recurrenceMs === null ? null : new Date(recurrenceMs).toISOString(),
      startMs: Math.floor(startMs / GRID_MS) * GRID_MS,
      endMs: Math.ceil(endMs / GRID_MS) * GRID_MS,
    });
  };
  for (const [uid, events] of byUid) {
    for (const { recurrenceMs, startMs, endMs } of occurrencesOf(events, window))
      add(uid, recurrenceMs, startMs, endMs);
  }
  for (const { uid, startMs, endMs } of all('VFREEBUSY', readFreeBusy).flat()) {
    if (startMs < endMs && endMs > window.startMs && startMs < window.endMs) add(uid, startMs, startMs, endMs);
  }
  busy.sort((one, other) => one.startMs - other.startMs || (one.uid < other.uid ? -1 : 1));
  problems.sort((one, other) => one.line - other.line);
  return { busy, problems };
}

/** The IANA database is newer than most files' own definitions, so a name that it knows is looked up there. */
function zoneLookup(home: Zone, defined: ReadonlyMap<string, Zone>): ZoneLookup {
  const found = new Map<string, Zone | null>();
  return {
    home,
    find(id) {
      const known = found.get(id) ?? namedZone(id) ?? defined.get(id) ?? null;
      found.set(id, known);
      return known;
    },
  };
}
