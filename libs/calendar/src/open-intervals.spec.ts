import { CalendarTextError } from './errors.js';
import { totalMinutes } from './intervals.js';
import { closedInterval, openIntervals } from './open-intervals.js';
import { toInstantMs, toLocal } from './zone.js';

const ZONE = 'Europe/Berlin';
const at = (local: string): number => toInstantMs(local, ZONE);
const weekdays = (startsLocal: string, minutes: number) => ({
  zone: ZONE,
  startsLocal,
  minutes,
  rrule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR',
});
const MORNINGS = weekdays('2026-01-05T08:00', 240);
const AFTERNOONS = weekdays('2026-01-05T13:00', 240);

describe('open intervals', () => {
  it('leave the rules without closures and busy time, cut at the window', () => {
    const open = openIntervals(
      {
        rules: [MORNINGS, AFTERNOONS],
        closures: [
          { zone: ZONE, firstOn: '2026-02-03', lastOn: '2026-02-05' },
          { startMs: at('2026-02-06T10:00'), endMs: at('2026-02-06T13:30') },
        ],
        busy: [
          { startMs: at('2026-02-02T15:00'), endMs: at('2026-02-02T16:00') },
          { startMs: at('2026-02-02T09:00'), endMs: at('2026-02-02T09:30') },
        ],
      },
      { startMs: at('2026-02-02T08:30'), endMs: at('2026-02-06T16:00') },
    );
    expect(
      open.map((each) => `${toLocal(each.startMs, ZONE).slice(8)}-${toLocal(each.endMs, ZONE).slice(11)}`),
    ).toEqual([
      '02T08:30-09:00',
      '02T09:30-12:00',
      '02T13:00-15:00',
      '02T16:00-17:00',
      '06T08:00-10:00',
      '06T13:30-16:00',
    ]);
  });

  it('close a whole local day, 23 hours long when the clock is set forward', () => {
    expect(totalMinutes([closedInterval({ zone: ZONE, firstOn: '2026-03-29', lastOn: '2026-03-29' })])).toBe(23 * 60);
    expect(() => closedInterval({ zone: ZONE, firstOn: '2026-03-29', lastOn: '2026-03-28' })).toThrow(
      CalendarTextError,
    );
  });

  // Placement Friday 16:00, clinic Monday to Friday; the windows of the first check are common practice: 24-72 hours,
  // 18-36 hours for an immediate denture.
  it('leave only Monday 9:00-16:00 for a first check 24-72 hours after Friday 16:00, and nothing within 36 hours', () => {
    const hours = { rules: [weekdays('2026-01-05T09:00', 480)] };
    const placedMs = at('2026-02-06T16:00');
    const after = (hoursAfter: number): number => placedMs + hoursAfter * 3_600_000;
    expect(openIntervals(hours, { startMs: after(24), endMs: after(72) })).toEqual([
      { startMs: after(65), endMs: at('2026-02-09T16:00') },
    ]);
    expect(openIntervals(hours, { startMs: after(18), endMs: after(36) })).toEqual([]);
  });
});
