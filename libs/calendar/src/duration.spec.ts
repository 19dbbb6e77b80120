import { subtractDuration } from './duration.js';
import { CalendarTextError } from './errors.js';
import { toInstantMs, toLocal } from './zone.js';

describe('a duration before an instant', () => {
  // RFC 5545, section 3.3.6: days are nominal, hours exact. Berlin changes to summer time on 28 March 2027, New York to
  // standard time on 1 November 2026.
  it.each([
    ['2027-03-29T09:00', 'Europe/Berlin', 'P2D', '2027-03-27T09:00'],
    ['2027-03-29T09:00', 'Europe/Berlin', 'PT48H', '2027-03-27T08:00'],
    ['2026-11-02T09:00', 'America/New_York', 'PT48H', '2026-10-31T10:00'],
    ['2026-11-02T09:00', 'America/New_York', 'P2D', '2026-10-31T09:00'],
    ['2027-03-29T09:00', 'Europe/Berlin', 'P1W', '2027-03-22T09:00'],
    ['2027-03-29T09:00', 'Europe/Berlin', 'P1DT12H', '2027-03-27T20:00'],
    ['2027-03-29T09:00', 'Europe/Berlin', 'PT1H30M', '2027-03-29T07:30'],
    // The wall time one day before falls into the gap: the offset before it counts.
    ['2027-03-29T02:30', 'Europe/Berlin', 'P1D', '2027-03-28T03:30'],
  ])('%s in %s less %s is %s', (local, zone, duration, expected) => {
    expect(toLocal(subtractDuration(toInstantMs(local, zone), zone, duration), zone)).toBe(expected);
  });

  it('keeps the second of two equal wall times when no days are taken off', () => {
    const secondMs = Date.UTC(2026, 9, 25, 1, 30);
    expect(subtractDuration(secondMs, 'Europe/Berlin', 'PT0S')).toBe(secondMs);
  });

  it.each(['', 'P', 'PT', 'P1DT', '-P1D', 'P1M', 'P1Y', 'P1W2D', '2D', 'PT1.5H'])('refuses "%s"', (duration) => {
    expect(() => subtractDuration(0, 'UTC', duration)).toThrow(CalendarTextError);
  });
});
