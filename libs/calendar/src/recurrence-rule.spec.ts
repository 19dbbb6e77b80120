import { RecurrenceRuleError } from './errors.js';
import { parseRecurrence } from './recurrence-rule.js';

describe('a recurrence rule', () => {
  // RFC 5545, section 3.3.10, says which parts exist, their ranges, and which may stand together.
  it.each([
    ['', 'is not a part'],
    ['RRULE:FREQ=DAILY', 'RRULE:FREQ is not known'],
    ['FREQ=DAILY;', 'is not a part'],
    ['INTERVAL=2', 'FREQ is missing'],
    ['FREQ=HOURLY', 'DAILY, WEEKLY, MONTHLY, YEARLY'],
    ['FREQ=DAILY;BYSECOND=0', 'BYSECOND is not known'],
    ['FREQ=DAILY;FREQ=WEEKLY', 'FREQ is given twice'],
    ['FREQ=DAILY;INTERVAL=0', 'INTERVAL is "0"'],
    ['FREQ=DAILY;COUNT=3;UNTIL=20260101T000000Z', 'COUNT and UNTIL'],
    ['FREQ=DAILY;UNTIL=20260631T000000Z', 'UNTIL is "20260631T000000Z"'],
    ['FREQ=DAILY;UNTIL=2026-06-30', 'UNTIL is "2026-06-30"'],
    ['FREQ=WEEKLY;BYDAY=MO,XX', 'BYDAY holds "XX"'],
    ['FREQ=WEEKLY;BYDAY=1MO', 'numbered weekday with WEEKLY'],
    ['FREQ=MONTHLY;BYDAY=54MO', 'BYDAY holds "54MO"'],
    ['FREQ=YEARLY;BYWEEKNO=20;BYDAY=1MO', 'numbered weekday with BYWEEKNO'],
    ['FREQ=MONTHLY;BYMONTH=13', 'whole numbers 1 to 12'],
    ['FREQ=MONTHLY;BYMONTHDAY=0', 'whole numbers 1 to 31'],
    ['FREQ=MONTHLY;BYHOUR=-1', 'whole numbers 0 to 23'],
    ['FREQ=WEEKLY;BYMONTHDAY=1', 'BYMONTHDAY with WEEKLY'],
    ['FREQ=MONTHLY;BYWEEKNO=1', 'BYWEEKNO with MONTHLY'],
    ['FREQ=MONTHLY;BYYEARDAY=1', 'BYYEARDAY with MONTHLY'],
    ['FREQ=MONTHLY;BYSETPOS=1', 'BYSETPOS alone'],
    ['FREQ=WEEKLY;WKST=1', 'WKST holds "1"'],
  ])('"%s" is refused: %s', (text, reason) => {
    expect(() => parseRecurrence(text)).toThrow(RecurrenceRuleError);
    expect(() => parseRecurrence(text)).toThrow(reason);
  });

  it('may be written in small letters', () => {
    expect(parseRecurrence('freq=weekly;byday=mo')).toEqual(parseRecurrence('FREQ=WEEKLY;BYDAY=MO'));
  });
});
