import fc from 'fast-check';
import { CalendarNumberError } from './errors.js';
import { intersect, normalise, totalMinutes } from './intervals.js';
import { addDays, dateOfDay } from './local-date.js';
import { busyToBits, dayOfSlot, toBits, type SlotAxis } from './slots.js';
import { localDate, toInstantMs } from './zone.js';

const MINUTE = 60_000;
const anAxis = (fields: Partial<SlotAxis> = {}): SlotAxis => ({ originMs: 0, slotMinutes: 5, count: 100, ...fields });
const isSet = (bits: Uint32Array, slot: number): boolean => (((bits[slot >>> 5] ?? 0) >>> (slot & 31)) & 1) === 1;
const lists = fc
  .array(fc.tuple(fc.integer({ min: -60, max: 560 }), fc.nat(250)), { maxLength: 6 })
  .map((all) =>
    normalise(all.map(([start, length]) => ({ startMs: start * MINUTE, endMs: (start + length) * MINUTE }))),
  );
const RUNS = { seed: 20260105, numRuns: 400 };

describe('slots', () => {
  it('are free only when wholly free, and busy as soon as touched', () => {
    fc.assert(
      fc.property(lists, fc.integer({ min: 1, max: 130 }), (list, count) => {
        const axis = anAxis({ count });
        const [free, busy] = [toBits(list, axis), busyToBits(list, axis)];
        expect(free).toHaveLength(Math.ceil(count / 32));
        const shared = Array.from({ length: free.length * 32 }, (_, slot) => {
          const range = { startMs: slot * 5 * MINUTE, endMs: (slot + 1) * 5 * MINUTE };
          return slot < count ? totalMinutes(intersect(list, [range])) : 0;
        });
        expect(shared.map((_, slot) => isSet(free, slot))).toEqual(shared.map((minutes) => minutes === 5));
        expect(shared.map((_, slot) => isSet(busy, slot))).toEqual(shared.map((minutes) => minutes > 0));
      }),
      RUNS,
    );
  });

  it('fill whole words between the ends of a long range', () => {
    expect([...toBits([{ startMs: 5 * MINUTE, endMs: 97 * 5 * MINUTE }], anAxis())]).toEqual([
      0xffff_fffe, 0xffff_ffff, 0xffff_ffff, 1,
    ]);
  });

  it('know their local day through the change of the clock', () => {
    const zone = 'Europe/Berlin';
    const axis = anAxis({ originMs: toInstantMs('2026-03-28T12:00', zone), count: 3 * 288 });
    const days = dayOfSlot(axis, zone);
    const shown = Array.from(days, (_, slot) => localDate(axis.originMs + slot * 5 * MINUTE, zone));
    expect(Array.from(days, (day) => dateOfDay(day))).toEqual(shown);
    const sundays = days.filter((day) => dateOfDay(day) === addDays('2026-03-28', 1));
    expect(sundays).toHaveLength(23 * 12);
  });

  it('never go back a day where a clock is set back over midnight', () => {
    // IANA: until 2011 Newfoundland changed at 0:01; on 7 November 2010 to 23:01 of the day before.
    const zone = 'America/St_Johns';
    const axis = anAxis({ originMs: toInstantMs('2010-11-06T23:00', zone), slotMinutes: 1, count: 180 });
    const days = [...dayOfSlot(axis, zone)];
    expect(days).toEqual([...days].sort((a, b) => a - b));
    expect(new Set(days).size).toBe(2);
  });

  it('refuse an axis that is none', () => {
    expect(() => toBits([], anAxis({ slotMinutes: 0 }))).toThrow(CalendarNumberError);
    expect(() => busyToBits([], anAxis({ count: -1 }))).toThrow(CalendarNumberError);
    expect(() => dayOfSlot(anAxis({ originMs: NaN }), 'UTC')).toThrow(CalendarNumberError);
  });
});
