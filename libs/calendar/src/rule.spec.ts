import { CalendarNumberError, CalendarTextError } from './errors.js';
import type { Interval } from './intervals.js';
import { expandRule, type LocalRule } from './rule.js';
import { toInstantMs, toLocal } from './zone.js';

const aRule = (fields: Partial<LocalRule> = {}): LocalRule => ({
  zone: 'Europe/Berlin',
  startsLocal: '2026-01-05T08:00',
  minutes: 540,
  ...fields,
});
const YEAR_2026 = { startMs: Date.UTC(2026, 0, 1), endMs: Date.UTC(2027, 0, 1) };

function localTimes(rule: LocalRule, window: Interval = YEAR_2026): string[] {
  return expandRule(rule, window).map(
    (each) => `${toLocal(each.startMs, rule.zone)}/${toLocal(each.endMs, rule.zone)}`,
  );
}

const startDays = (rule: LocalRule): string[] => localTimes(rule).map((each) => each.slice(5, 16));

describe('opening hours', () => {
  it('keep their times on the wall on the days on which the clock changes', () => {
    const sundays = aRule({ startsLocal: '2026-03-22T01:00', minutes: 300, rrule: 'FREQ=WEEKLY;COUNT=3' });
    expect(localTimes(sundays)).toEqual([
      '2026-03-22T01:00/2026-03-22T06:00',
      '2026-03-29T01:00/2026-03-29T06:00',
      '2026-04-05T01:00/2026-04-05T06:00',
    ]);
    const hours = expandRule(sundays, YEAR_2026).map(({ startMs, endMs }) => (endMs - startMs) / 3_600_000);
    expect(hours).toEqual([5, 4, 5]);
  });

  it('run through the repeated hour in autumn', () => {
    const night = aRule({ startsLocal: '2026-10-25T01:00', minutes: 180 });
    expect(expandRule(night, YEAR_2026)).toEqual([
      { startMs: Date.UTC(2026, 9, 24, 23), endMs: Date.UTC(2026, 9, 25, 3) },
    ]);
  });

  it('drop an instance that falls into the gap, without counting it', () => {
    const daily = aRule({ startsLocal: '2026-03-28T02:30', minutes: 15, rrule: 'FREQ=DAILY;COUNT=3' });
    expect(startDays(daily)).toEqual(['03-28T02:30', '03-30T02:30', '03-31T02:30']);
    const lordHowe = aRule({ ...daily, zone: 'Australia/Lord_Howe', startsLocal: '2026-10-03T02:15' });
    expect(startDays(lordHowe)).toEqual(['10-03T02:15', '10-05T02:15', '10-06T02:15']);
  });

  it('take the first of two equal wall times', () => {
    const daily = aRule({ startsLocal: '2026-10-25T02:30', minutes: 15, rrule: 'FREQ=DAILY;COUNT=1' });
    expect(expandRule(daily, YEAR_2026)[0]?.startMs).toBe(Date.UTC(2026, 9, 25, 0, 30));
  });

  it('read a single stated time in a gap by the offset before it, and keep its length', () => {
    const once = aRule({ startsLocal: '2026-03-29T02:30', minutes: 60 });
    expect(localTimes(once)).toEqual(['2026-03-29T03:30/2026-03-29T04:30']);
  });

  it('strike out and add single times', () => {
    const weekly = aRule({
      rrule: 'FREQ=WEEKLY;COUNT=3',
      exceptLocal: ['2026-01-12T08:00', '2026-01-14T08:00'],
      extraLocal: ['2026-01-13T10:00', '2026-01-14T08:00'],
    });
    expect(startDays(weekly)).toEqual(['01-05T08:00', '01-13T10:00', '01-19T08:00']);
  });

  it('include an UNTIL that an instance starts at, read in UTC or on the wall', () => {
    const until = (text: string): number =>
      expandRule(aRule({ startsLocal: '2026-06-01T08:00', rrule: `FREQ=DAILY;UNTIL=${text}` }), YEAR_2026).length;
    // 8:00 in Berlin in summer is 6:00 in UTC.
    expect(until('20260603T060000Z')).toBe(3);
    expect(until('20260603T055959Z')).toBe(2);
    expect(until('20260603T080000')).toBe(3);
    expect(until('20260603T075959')).toBe(2);
    expect(until('20260603')).toBe(3);
  });

  it('count from the first start, however late the window begins', () => {
    const counted = aRule({ startsLocal: '2024-01-01T08:00', rrule: 'FREQ=WEEKLY;COUNT=107' });
    expect(startDays(counted)).toEqual(['01-05T08:00', '01-12T08:00']);
  });

  it('find the occurrence that reaches into the window and none that only touches it', () => {
    const overnight = aRule({ startsLocal: '2026-01-05T20:00', minutes: 720, rrule: 'FREQ=DAILY' });
    const at = (local: string): number => toInstantMs(local, 'Europe/Berlin');
    expect(localTimes(overnight, { startMs: at('2026-02-02T07:55'), endMs: at('2026-02-02T20:00') })).toEqual([
      '2026-02-01T20:00/2026-02-02T08:00',
    ]);
    expect(localTimes(overnight, { startMs: at('2026-02-02T08:00'), endMs: at('2026-02-02T20:00') })).toEqual([]);
  });

  it('end at once for a rule that never holds', () => {
    expect(expandRule(aRule({ rrule: 'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30' }), YEAR_2026)).toEqual([]);
    expect(expandRule(aRule({ rrule: 'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30;COUNT=5' }), YEAR_2026)).toEqual([]);
  });

  it('refuse lengths, zones and windows that make no sense', () => {
    expect(() => expandRule(aRule({ minutes: 0 }), YEAR_2026)).toThrow(CalendarNumberError);
    expect(() => expandRule(aRule({ minutes: 10_081 }), YEAR_2026)).toThrow(CalendarNumberError);
    expect(() => expandRule(aRule({ zone: 'Berlin' }), YEAR_2026)).toThrow(CalendarTextError);
    expect(() => expandRule(aRule({ startsLocal: '2026-01-05' }), YEAR_2026)).toThrow(CalendarTextError);
    const endless = { startMs: 0, endMs: Infinity };
    expect(() => expandRule(aRule({ rrule: 'FREQ=DAILY' }), endless)).toThrow(CalendarNumberError);
  });
});
