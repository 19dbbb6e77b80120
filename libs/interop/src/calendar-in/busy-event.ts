import {
  ComponentProblem,
  readProperties,
  single,
  textOf,
  type CalendarProperties,
  type CalendarProperty,
  type RawComponent,
} from './content-lines.js';
import { parseMoment, parseSpan, type Moment, type Span } from './moments.js';
import { readRecurrence, type Recurrence } from './recurrence.js';
import { UTC, type Zone } from './zones.js';

const DAY_MS = 86_400_000;

/** A VEVENT reduced to what it says about time. Titles and people are not read. */
export interface BusyEvent {
  readonly uid: string;
  readonly line: number;
  readonly sequence: number;
  readonly stampMs: number;
  /** False for transparent and cancelled events. */
  readonly blocks: boolean;
  readonly zone: Zone;
  readonly startWallMs: number;
  readonly startMs: number;
  readonly span: Span;
  readonly rule: Recurrence | null;
  readonly extra: readonly { readonly startMs: number; readonly span: Span }[];
  readonly excludes: (instantMs: number, wallMs: number) => boolean;
  /** The instance that this event stands for, or from which on it changes the series; null for the series itself. */
  readonly replaces: { readonly startMs: number; readonly andFuture: boolean } | null;
}

/** Zones by TZID, and the zone of the resource for floating times and whole days. */
export interface ZoneLookup {
  readonly home: Zone;
  find(id: string): Zone | null;
}

/** @throws {ComponentProblem} naming line and property when the event cannot be understood */
export function readEvent(component: RawComponent, zones: ZoneLookup): BusyEvent {
  const properties = readProperties(component);
  const uid = textOf(properties, 'UID');
  if (uid === null || uid === '') throw new ComponentProblem(component.line, 'UID is missing');
  const start = single(properties, 'DTSTART');
  if (start === null) throw new ComponentProblem(component.line, 'DTSTART is missing');
  const exrule = properties.get('EXRULE')?.[0];
  // RFC 5545, section A.3, took EXRULE out of the standard.
  if (exrule !== undefined)
    throw new ComponentProblem(exrule.line, 'EXRULE is no longer part of iCalendar; use EXDATE');

  const moment = momentOf(start, start.values[0]);
  const zone = zoneOf(start, moment, zones);
  const startMs = zone.place(moment.wallMs).instantMs;
  const span = spanOf(properties, moment, startMs, zones);
  const rule = single(properties, 'RRULE');
  const recurrenceId = single(properties, 'RECURRENCE-ID');
  return {
    uid,
    line: component.line,
    sequence: Number(textOf(properties, 'SEQUENCE') ?? 0),
    stampMs: parseMoment(properties.get('DTSTAMP')?.[0]?.values[0])?.wallMs ?? 0,
    blocks:
      textOf(properties, 'TRANSP')?.toUpperCase() !== 'TRANSPARENT' &&
      textOf(properties, 'STATUS')?.toUpperCase() !== 'CANCELLED',
    zone,
    startWallMs: moment.wallMs,
    startMs,
    span,
    rule: rule === null ? null : readRecurrence(rule),
    extra: (properties.get('RDATE') ?? []).flatMap((property) =>
      property.values.map((value) => extraOf(property, value, span, zones)),
    ),
    excludes: exclusions(properties.get('EXDATE') ?? [], zones),
    replaces:
      recurrenceId === null
        ? null
        : {
            startMs: instantOf(recurrenceId, recurrenceId.values[0], zones),
            andFuture: recurrenceId.parameter('range')?.toUpperCase() === 'THISANDFUTURE',
          },
  };
}

/** Busy periods of a VFREEBUSY; periods marked free are left out. @throws {ComponentProblem} */
export function readFreeBusy(component: RawComponent): { uid: string; startMs: number; endMs: number }[] {
  const properties = readProperties(component);
  const uid = textOf(properties, 'UID') ?? 'free-busy';
  return (properties.get('FREEBUSY') ?? []).flatMap((property) => {
    if (property.parameter('fbtype')?.toUpperCase() === 'FREE') return [];
    return property.values.map((value) => {
      const [from, to] = Array.isArray(value) ? (value as unknown[]) : [];
      const start = momentOf(property, from);
      const span = parseSpan(to);
      const endMs = span === null ? momentOf(property, to).wallMs : addSpan(UTC, start.wallMs, span);
      return { uid, startMs: start.wallMs, endMs };
    });
  });
}

/** The end of a span that begins at that wall-clock time: days on the calendar, the rest on the clock. */
export function addSpan(zone: Zone, wallMs: number, span: Span): number {
  return zone.place(wallMs + span.days * DAY_MS).instantMs + span.exactMs;
}

function momentOf({ line }: CalendarProperty, value: unknown): Moment {
  const moment = parseMoment(value);
  if (moment !== null) return moment;
  throw new ComponentProblem(line, 'accepts a date such as 20270128 or a date and time such as 20270128T090000Z');
}

function zoneOf(property: CalendarProperty, moment: Moment, zones: ZoneLookup): Zone {
  if (moment.kind === 'utc') return UTC;
  const id = property.parameter('tzid');
  if (moment.kind === 'date' || id === null) return zones.home;
  const zone = zones.find(id);
  if (zone !== null) return zone;
  throw new ComponentProblem(property.line, `TZID "${id}" is neither a VTIMEZONE of the file nor an IANA zone`);
}

function instantOf(property: CalendarProperty, value: unknown, zones: ZoneLookup): number {
  const moment = momentOf(property, value);
  return zoneOf(property, moment, zones).place(moment.wallMs).instantMs;
}

/**
 * RFC 5545, section 3.8.5.3: an end given as DTEND makes every instance last exactly as long as the first; an end
 * given as DURATION is nominal, so that a day across a clock change may have 23 or 25 hours.
 */
function spanOf(properties: CalendarProperties, start: Moment, startMs: number, zones: ZoneLookup): Span {
  const end = single(properties, 'DTEND');
  const duration = single(properties, 'DURATION');
  if (end !== null && duration !== null)
    throw new ComponentProblem(duration.line, 'DTEND and DURATION exclude each other');
  if (duration !== null) {
    const span = parseSpan(duration.values[0]);
    if (span === null) throw new ComponentProblem(duration.line, 'DURATION accepts a length such as PT45M');
    return span;
  }
  if (end === null) return { days: start.kind === 'date' ? 1 : 0, exactMs: 0 };
  const moment = momentOf(end, end.values[0]);
  if ((moment.kind === 'date') !== (start.kind === 'date')) {
    throw new ComponentProblem(end.line, 'DTEND must be a date when DTSTART is one, and else a date and time');
  }
  if (moment.kind === 'date') {
    const days = (moment.wallMs - start.wallMs) / DAY_MS;
    if (days < 0) throw new ComponentProblem(end.line, 'DTEND lies before DTSTART');
    // Some programs write the same day twice for an event of one day.
    return { days: Math.max(days, 1), exactMs: 0 };
  }
  const exactMs = zoneOf(end, moment, zones).place(moment.wallMs).instantMs - startMs;
  if (exactMs < 0) throw new ComponentProblem(end.line, 'DTEND lies before DTSTART');
  return { days: 0, exactMs };
}

function extraOf(property: CalendarProperty, value: unknown, span: Span, zones: ZoneLookup) {
  if (!Array.isArray(value)) return { startMs: instantOf(property, value, zones), span };
  const [from, to] = value as unknown[];
  const startMs = instantOf(property, from, zones);
  const length = parseSpan(to) ?? { days: 0, exactMs: instantOf(property, to, zones) - startMs };
  if (length.exactMs < 0) throw new ComponentProblem(property.line, 'RDATE holds a period that ends before it begins');
  return { startMs, span: length };
}

/** An EXDATE that is a plain date takes out every instance of that day, as programs that write it mean it. */
function exclusions(properties: readonly CalendarProperty[], zones: ZoneLookup): BusyEvent['excludes'] {
  const instants = new Set<number>();
  const days = new Set<number>();
  for (const property of properties) {
    for (const value of property.values) {
      const moment = momentOf(property, value);
      if (moment.kind === 'date') days.add(moment.wallMs);
      else instants.add(zoneOf(property, moment, zones).place(moment.wallMs).instantMs);
    }
  }
  return (instantMs, wallMs) => instants.has(instantMs) || days.has(Math.floor(wallMs / DAY_MS) * DAY_MS);
}
