import {
  axisDate,
  birthDate,
  dateAndTime,
  lengthOfTime,
  longDate,
  shortDate,
  tickDate,
  timeLeft,
  timeOfDay,
  zoneNote,
} from './wording.js';

describe('dates in words', () => {
  it('says weekday, day and month name, and the year only when it is another year', () => {
    expect(longDate('2027-01-28', '2027-01-05')).toBe('Thursday 28 January');
    expect(longDate('2027-01-28', '2026-12-20')).toBe('Thursday 28 January 2027');
    expect(shortDate('2026-12-22', '2026-11-25')).toBe('Tue 22 Dec');
    expect(shortDate('2027-01-05', '2026-11-25')).toBe('Tue 5 Jan 2027');
  });

  it('writes axis, tick and birth dates', () => {
    expect(axisDate('2027-01-05')).toBe('Tue 5 Jan');
    expect(tickDate('2027-01-05')).toBe('5 Jan');
    expect(birthDate('1949-03-04')).toBe('4 Mar 1949');
  });
});

describe('times in words', () => {
  it("reads the clinic's wall, summer and winter", () => {
    expect(timeOfDay('2027-01-28T09:20:00Z', 'Europe/London')).toBe('09:20');
    expect(timeOfDay('2027-07-28T09:20:00Z', 'Europe/London')).toBe('10:20');
    expect(dateAndTime('2027-01-28T23:30:00Z', 'Europe/Berlin', '2027-01-01')).toBe('Fri 29 Jan, 00:30');
  });

  it('names the zone only when its wall differs from the viewer’s', () => {
    expect(zoneNote('2027-01-28T09:20:00Z', 'Europe/London', 'Europe/Lisbon')).toBeNull();
    expect(zoneNote('2027-01-28T09:20:00Z', 'America/New_York', 'Europe/London')).toBe('New York time');
  });

  it.each([
    [582_000, '9:42'],
    [5_000, '0:05'],
    [-1, '0:00'],
    [3_900_000, '1 h 05 min'],
  ])('counts down %i ms as %s', (left, words) => {
    expect(timeLeft(1_000_000 + left, 1_000_000)).toBe(words);
  });

  it.each([
    [45, '45 min'],
    [-45, '45 min'],
    [180, '3 h'],
    [1440, '1 day'],
    [2880, '2 days'],
    [2160, '1.5 days'],
  ])('says %i minutes as %s', (minutes, words) => {
    expect(lengthOfTime(minutes)).toBe(words);
  });
});
