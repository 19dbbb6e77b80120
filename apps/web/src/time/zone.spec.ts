import { addDays, daysBetween, isoWeekday, localDateOf, offsetMs, startOfDayMs } from './zone.js';

const at = (iso: string): number => Date.parse(iso);

describe('dates of instants', () => {
  it('takes the date on the wall of the zone, not the one in UTC', () => {
    expect(localDateOf(at('2027-01-28T23:30:00Z'), 'Europe/Berlin')).toBe('2027-01-29');
    expect(localDateOf(at('2027-01-28T03:00:00Z'), 'America/New_York')).toBe('2027-01-27');
  });

  // Source: IANA time zone database, Europe/London: British Summer Time runs 28 March 2027 01:00 UTC to 31 October 2027 01:00 UTC.
  it.each([
    ['2027-03-28T00:59:59Z', 0],
    ['2027-03-28T01:00:00Z', 3_600_000],
    ['2027-10-31T00:59:59Z', 3_600_000],
    ['2027-10-31T01:00:00Z', 0],
  ])('knows the offset of London at %s', (instant, expected) => {
    expect(offsetMs(at(instant), 'Europe/London')).toBe(expected);
  });

  it.each([
    ['2027-03-28', 'Europe/London', '2027-03-28T00:00:00Z'],
    ['2027-03-29', 'Europe/London', '2027-03-28T23:00:00Z'],
    ['2027-01-28', 'Asia/Kolkata', '2027-01-27T18:30:00Z'],
    // Source: IANA time zone database, America/Sao_Paulo: clocks went from 00:00 to 01:00 on 4 November 2018.
    ['2018-11-04', 'America/Sao_Paulo', '2018-11-04T03:00:00Z'],
  ])('begins %s in %s at %s', (date, zone, instant) => {
    expect(startOfDayMs(date, zone)).toBe(at(instant));
  });
});

describe('calendar dates', () => {
  it('counts over month, year and leap day', () => {
    expect(addDays('2027-12-31', 1)).toBe('2028-01-01');
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2027-01-05', -7)).toBe('2026-12-29');
  });

  it('counts the days between two, over month, year and leap day, backwards as well', () => {
    expect(daysBetween('2027-12-31', '2028-01-01')).toBe(1);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2027-01-05', '2026-12-29')).toBe(-7);
    expect(daysBetween('2027-01-05', '2027-01-05')).toBe(0);
  });

  it('numbers Monday 1 and Sunday 7', () => {
    expect(isoWeekday('2027-01-04')).toBe(1);
    expect(isoWeekday('2027-01-10')).toBe(7);
  });
});
