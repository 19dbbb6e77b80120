import { CalendarNumberError } from './errors.js';
import { addDays, dateOfDay, dayNumber, weekday } from './local-date.js';

describe('local dates', () => {
  it('counts days over months, leap days and years', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
    expect(addDays('2026-01-01', -1)).toBe('2025-12-31');
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(dateOfDay(-1)).toBe('1969-12-31');
  });

  it('numbers weekdays from Monday', () => {
    // RFC 5545, section 3.8.5.3: 2 September 1997 is a Tuesday.
    expect(weekday('1997-09-02')).toBe(2);
    expect(weekday('1969-12-28')).toBe(7);
    expect(weekday('2026-11-23')).toBe(1);
  });

  it('refuses a day outside the years that it can write', () => {
    expect(() => addDays('9999-12-31', 1)).toThrow(CalendarNumberError);
    expect(addDays('9999-12-30', 1)).toBe('9999-12-31');
    expect(() => addDays('1000-01-01', -1)).toThrow(CalendarNumberError);
  });
});
