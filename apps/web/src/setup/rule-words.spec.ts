import { endOf, minutesBetween, nextDates, ruleInWords, ruleOfWeekly, timeInWords, weeklyOf } from './rule-words.js';

it.each([
  ['FREQ=WEEKLY;BYDAY=MO,FR', 'every week on Monday and Friday'],
  ['FREQ=WEEKLY;INTERVAL=2;BYDAY=WE', 'every second week on Wednesday'],
  ['FREQ=WEEKLY;BYDAY=SA,MO,TU,WE,FR', 'every week on Monday to Wednesday, Friday and Saturday'],
  ['FREQ=DAILY', 'every day'],
  ['FREQ=MONTHLY;BYDAY=1MO,-1FR', 'every month on the 1st Monday and the last Friday'],
  ['FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2', 'every month on the 2nd from the end of Monday to Friday'],
  ['FREQ=YEARLY;BYMONTH=12;BYMONTHDAY=24', 'every year on the 24th in December'],
  ['FREQ=WEEKLY;BYDAY=TU;UNTIL=20270301', 'every week on Tuesday until 1 Mar 2027'],
  ['FREQ=WEEKLY;INTERVAL=3;BYDAY=TU;COUNT=4', 'every 3 weeks on Tuesday 4 times'],
])('says %s as "%s"', (rule, said) => {
  expect(ruleInWords(rule)).toBe(said);
});

it('says what a rule that is not understood lacks', () => {
  expect(ruleInWords('FREQ=OFTEN')).toContain('Accepted: DAILY, WEEKLY, MONTHLY, YEARLY');
});

it('offers weekdays for what weekdays can say, and gives the same rule back', () => {
  const rule = 'FREQ=WEEKLY;INTERVAL=2;BYDAY=MO,TH';
  expect(weeklyOf(rule)).toEqual({ days: [1, 4], every: 2 });
  expect(ruleOfWeekly({ days: [4, 1], every: 2 })).toBe(rule);
  for (const more of ['FREQ=DAILY', 'FREQ=WEEKLY;BYDAY=MO;COUNT=3', 'FREQ=WEEKLY', 'x'])
    expect(weeklyOf(more)).toBeNull();
});

it('previews the next dates in the zone, without those that are struck out', () => {
  const time = {
    startOn: '2027-01-04',
    startsLocal: '09:00',
    rrule: 'FREQ=WEEKLY;INTERVAL=2;BYDAY=MO',
    exceptLocal: ['2027-01-18T09:00'],
  };
  expect(nextDates(time, 'Europe/London', '2027-01-04', 3)).toEqual(['Mon 4 Jan', 'Mon 1 Feb', 'Mon 15 Feb']);
  expect(nextDates({ ...time, rrule: 'x' }, 'Europe/London', '2027-01-04', 3)).toEqual([]);
});

it('turns an end into a length and back, over midnight too', () => {
  expect(minutesBetween('09:00', '17:30', 0)).toBe(510);
  expect(minutesBetween('22:00', '06:00', 0)).toBe(480);
  expect(minutesBetween('08:00', '08:00', 0)).toBe(1440);
  expect(minutesBetween('', '08:00', 90)).toBe(90);
  expect(endOf('', 90)).toBe('');
  expect([endOf('09:00', 510), endOf('22:00', 480)]).toEqual(['17:30', '06:00']);
  const hours = { startOn: '2027-01-04', startsLocal: '09:00', rrule: 'FREQ=DAILY', exceptLocal: [], minutes: 60 };
  expect(timeInWords(hours)).toBe('Every day, 09:00 to 10:00');
});
