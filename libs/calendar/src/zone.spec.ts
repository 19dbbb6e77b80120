import fc from 'fast-check';
import { CalendarTextError } from './errors.js';
import { localDate, requireZone, startOfDayMs, toInstantMs, toLocal } from './zone.js';

const ZONES = [
  'Europe/Berlin',
  'America/New_York',
  'Australia/Lord_Howe',
  'Africa/Casablanca',
  'Asia/Kathmandu',
  'America/St_Johns',
  'Pacific/Apia',
  'America/Santiago',
  'UTC',
];
const formats = new Map(
  ZONES.map((zone) => [
    zone,
    new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' }),
  ]),
);
const zones = fc.constantFrom(...ZONES);
const minutes = fc
  .integer({ min: Date.UTC(2005, 0, 1) / 60_000, max: Date.UTC(2040, 0, 1) / 60_000 })
  .map((minute) => minute * 60_000);
const RUNS = { seed: 20260105, numRuns: 1000 };

/** What the engine's own formatter shows on the wall clock. */
function shown(ms: number, zone: string): string {
  return formats.get(zone)?.format(ms).replace(' ', 'T') ?? '';
}

const iso = (ms: number): string => new Date(ms).toISOString().replace(':00.000Z', 'Z');

describe('local time', () => {
  it('shows what the engine formats, in every zone', () => {
    fc.assert(
      fc.property(minutes, zones, (ms, zone) => {
        expect(toLocal(ms, zone)).toBe(shown(ms, zone));
      }),
      RUNS,
    );
  });

  it('finds the first instant that shows a local time', () => {
    fc.assert(
      fc.property(minutes, zones, (ms, zone) => {
        const found = toInstantMs(shown(ms, zone), zone);
        expect(shown(found, zone)).toBe(shown(ms, zone));
        expect(found).toBeLessThanOrEqual(ms);
      }),
      RUNS,
    );
  });

  // Source: RFC 5545, section 3.3.5, FORM #3, its two examples of 2007. The others: the same rule applied to the
  // changes that the IANA database records (Berlin 29 March and 25 October 2026, Lord Howe half an hour on 5 April and
  // 4 October 2026, Casablanca around Ramadan 2026).
  it.each([
    ['2007-03-11T02:30', 'America/New_York', '2007-03-11T07:30Z'],
    ['2007-11-04T01:30', 'America/New_York', '2007-11-04T05:30Z'],
    ['2026-03-29T02:30', 'Europe/Berlin', '2026-03-29T01:30Z'],
    ['2026-10-25T02:30', 'Europe/Berlin', '2026-10-25T00:30Z'],
    ['2026-10-04T02:15', 'Australia/Lord_Howe', '2026-10-03T15:45Z'],
    ['2026-04-05T01:45', 'Australia/Lord_Howe', '2026-04-04T14:45Z'],
    ['2026-02-15T02:30', 'Africa/Casablanca', '2026-02-15T01:30Z'],
    ['2026-03-22T02:30', 'Africa/Casablanca', '2026-03-22T02:30Z'],
    ['2026-01-05T09:00', 'Asia/Kathmandu', '2026-01-05T03:15Z'],
  ])('reads %s in %s as %s', (local, zone, instant) => {
    expect(iso(toInstantMs(local, zone))).toBe(instant);
  });

  it('starts a day at the first instant that has its date', () => {
    fc.assert(
      fc.property(minutes, zones, (ms, zone) => {
        const startMs = startOfDayMs(localDate(ms, zone), zone);
        expect(shown(startMs, zone).slice(0, 10)).toBe(shown(ms, zone).slice(0, 10));
        expect(shown(startMs - 60_000, zone) < shown(ms, zone).slice(0, 10)).toBe(true);
      }),
      RUNS,
    );
  });

  it('starts a day at the end of the gap that swallows its midnight', () => {
    // IANA: Santiago moves from 24:00 on Saturday 5 September 2026 to 1:00.
    expect(toLocal(startOfDayMs('2026-09-06', 'America/Santiago'), 'America/Santiago')).toBe('2026-09-06T01:00');
  });

  it.each(['Europe/Nowhere', '', '+02:00', 'Berlin'])('refuses the zone "%s"', (zone) => {
    expect(() => requireZone(zone)).toThrow(CalendarTextError);
  });

  it.each(['2026-02-30T09:00', '2026-13-01T09:00', '2026-01-05T24:00', '2026-01-05 09:00', '2026-01-05T09:00Z'])(
    'refuses the local time "%s"',
    (local) => {
      expect(() => toInstantMs(local, 'UTC')).toThrow(CalendarTextError);
    },
  );
});
