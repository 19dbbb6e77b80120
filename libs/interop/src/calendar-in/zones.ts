import { CalendarTextError, requireZone, toInstantMs, toLocal } from '@archwright/calendar';
import { ComponentProblem, readProperties, single, textOf, type RawComponent } from './content-lines.js';
import { localText, parseMoment } from './moments.js';
import { readRecurrence, wallTimes, type Recurrence } from './recurrence.js';

const MINUTE_MS = 60_000;

/** Puts wall-clock times (see `Moment`) on the time line and back. */
export interface Zone {
  /**
   * A time that occurs twice is the first one; one that the zone skips takes the offset before the gap and is marked
   * (RFC 5545, section 3.3.5).
   */
  place(wallMs: number): { readonly instantMs: number; readonly skipped: boolean };
  wallOf(instantMs: number): number;
}

export const UTC: Zone = {
  place: (wallMs) => ({ instantMs: wallMs, skipped: false }),
  wallOf: (instantMs) => instantMs,
};

/** A zone of the IANA database by name, or null when there is none of that name. */
export function namedZone(name: string): Zone | null {
  try {
    requireZone(name);
  } catch (error) {
    if (error instanceof CalendarTextError) return null;
    throw error;
  }
  const wallOf = (instantMs: number) => Date.parse(`${toLocal(instantMs, name)}Z`) + (instantMs % MINUTE_MS);
  return {
    wallOf,
    place(wallMs) {
      const instantMs = toInstantMs(localText(wallMs), name) + (wallMs % MINUTE_MS);
      return { instantMs, skipped: wallOf(instantMs) !== wallMs };
    },
  };
}

interface Observance {
  readonly fromMs: number;
  readonly toMs: number;
  readonly startWallMs: number;
  readonly rule: Recurrence | null;
  readonly extraWallMs: readonly number[];
}

/**
 * A zone as the file itself defines it (VTIMEZONE), for names that the IANA database does not know.
 *
 * @param endMs transitions are worked out up to here; later times keep the last offset
 * @throws {ComponentProblem} when the definition cannot be read
 */
export function definedZone(component: RawComponent, endMs: number): { id: string; zone: Zone } {
  const id = textOf(readProperties(component), 'TZID');
  if (id === null) throw new ComponentProblem(component.line, 'TZID is missing');
  const observances = component.parts.map(readObservance);
  const transitions = observances
    .flatMap((observance) =>
      onsets(observance, endMs).map((wallMs) => ({ ...observance, atMs: wallMs - observance.fromMs })),
    )
    .sort((one, other) => one.atMs - other.atMs);
  const [first] = transitions;
  if (first === undefined) throw new ComponentProblem(component.line, 'neither STANDARD nor DAYLIGHT is given');

  const offsetAt = (instantMs: number) => transitions.findLast(({ atMs }) => atMs <= instantMs)?.toMs ?? first.fromMs;
  const offsets = [...new Set(transitions.flatMap(({ fromMs, toMs }) => [fromMs, toMs]))].sort(
    (one, other) => other - one,
  );
  return {
    id,
    zone: {
      wallOf: (instantMs) => instantMs + offsetAt(instantMs),
      place(wallMs) {
        const offset = offsets.find((candidate) => offsetAt(wallMs - candidate) === candidate);
        if (offset !== undefined) return { instantMs: wallMs - offset, skipped: false };
        const gap = transitions.find(({ atMs, fromMs, toMs }) => atMs + fromMs <= wallMs && wallMs < atMs + toMs);
        return { instantMs: wallMs - (gap ?? first).fromMs, skipped: true };
      },
    },
  };
}

function readObservance(component: RawComponent): Observance {
  const properties = readProperties(component);
  const need = (name: string) => {
    const property = single(properties, name);
    if (property === null) throw new ComponentProblem(component.line, `${name} is missing`);
    return property;
  };
  const offsetOf = (name: string) => {
    const { line, values } = need(name);
    const [, sign, hours, minutes, seconds] = /^([+-])(\d\d):(\d\d)(?::(\d\d))?$/.exec(String(values[0])) ?? [];
    if (hours === undefined) throw new ComponentProblem(line, `${name} accepts an offset such as +0100`);
    const sizeMs = ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds ?? 0)) * 1000;
    return sign === '-' ? -sizeMs : sizeMs;
  };
  const start = need('DTSTART');
  const moment = parseMoment(start.values[0]);
  if (moment === null) throw new ComponentProblem(start.line, 'DTSTART accepts a local date and time');
  const rule = single(properties, 'RRULE');
  return {
    fromMs: offsetOf('TZOFFSETFROM'),
    toMs: offsetOf('TZOFFSETTO'),
    startWallMs: moment.wallMs,
    rule: rule === null ? null : readRecurrence(rule),
    extraWallMs: (properties.get('RDATE') ?? []).flatMap(({ values }) =>
      values.map(parseMoment).flatMap((extra) => (extra === null ? [] : [extra.wallMs])),
    ),
  };
}

/** Wall-clock times, in the offset before, at which the observance begins. */
function onsets({ startWallMs, rule, extraWallMs, fromMs }: Observance, endMs: number): number[] {
  const recurring: number[] = [];
  if (rule !== null) {
    const { until } = rule;
    // UNTIL of an observance is UTC (RFC 5545, section 3.6.5).
    const lastWallMs = until === null ? Infinity : until.kind === 'utc' ? until.wallMs + fromMs : until.wallMs;
    for (const wallMs of wallTimes(rule.rrule, startWallMs, startWallMs, endMs)) {
      if (wallMs > lastWallMs || (rule.count !== null && recurring.length >= rule.count)) break;
      recurring.push(wallMs);
    }
  }
  return [...new Set([startWallMs, ...extraWallMs, ...recurring])];
}
