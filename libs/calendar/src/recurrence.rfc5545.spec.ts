import { expandRule } from './rule.js';
import { toInstantMs, toLocal } from './zone.js';

const ZONE = 'America/New_York';

/** '1997-09 2,9-11' as local starts at 09:00. */
function starts(...months: string[]): string[] {
  return months.flatMap((month) => {
    const [yearMonth = '', days = ''] = month.split(' ');
    return days.split(',').flatMap((item) => {
      const [first = 0, last = first] = item.split('-').map(Number);
      return Array.from({ length: last - first + 1 }, (_, index) => {
        return `${yearMonth}-${String(first + index).padStart(2, '0')}T09:00`;
      });
    });
  });
}

function expanded(firstOn: string, rrule: string, exceptLocal: string[] = []): string[] {
  const rule = { zone: ZONE, startsLocal: `${firstOn}T09:00`, minutes: 10, rrule, exceptLocal };
  const window = { startMs: Date.UTC(1995, 0, 1), endMs: Date.UTC(2012, 0, 1) };
  return expandRule(rule, window).map(({ startMs }) => toLocal(startMs, ZONE));
}

const JANUARIES = ['1998-01 1-31', '1999-01 1-31', '2000-01 1-31'];
const TO_CHRISTMAS_WEEKLY = ['1997-09 2,9,16,23,30', '1997-10 7,14,21,28', '1997-11 4,11,18,25', '1997-12 2,9,16,23'];
const TUESDAYS_THURSDAYS = ['1997-09 2,4,9,11,16,18,23,25,30', '1997-10 2'];
const JUNE_JULY = [1997, 1998, 1999, 2000, 2001].flatMap((year) => [`${String(year)}-06 10`, `${String(year)}-07 10`]);
const SPRINGS = [1999, 2001, 2003].flatMap((year) => [1, 2, 3].map((month) => `${String(year)}-0${String(month)} 10`));

// Source: RFC 5545, section 3.8.5.3, its examples in order (DTSTART;TZID=America/New_York, 09:00), dates as printed there.
describe('recurrences that end, RFC 5545 section 3.8.5.3', () => {
  it.each([
    ['1997-09-02', 'FREQ=DAILY;COUNT=10', ['1997-09 2-11']],
    [
      '1997-09-02',
      'FREQ=DAILY;UNTIL=19971224T000000Z',
      ['1997-09 2-30', '1997-10 1-31', '1997-11 1-30', '1997-12 1-23'],
    ],
    ['1997-09-02', 'FREQ=DAILY;INTERVAL=10;COUNT=5', ['1997-09 2,12,22', '1997-10 2,12']],
    ['1998-01-01', 'FREQ=YEARLY;UNTIL=20000131T140000Z;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA', JANUARIES],
    ['1998-01-01', 'FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1', JANUARIES],
    ['1997-09-02', 'FREQ=WEEKLY;COUNT=10', ['1997-09 2,9,16,23,30', '1997-10 7,14,21,28', '1997-11 4']],
    ['1997-09-02', 'FREQ=WEEKLY;UNTIL=19971224T000000Z', TO_CHRISTMAS_WEEKLY],
    ['1997-09-02', 'FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH', TUESDAYS_THURSDAYS],
    ['1997-09-02', 'FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH', TUESDAYS_THURSDAYS],
    [
      '1997-09-01',
      'FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR',
      ['1997-09 1,3,5,15,17,19,29', '1997-10 1,3,13,15,17,27,29,31', '1997-11 10,12,14,24,26,28', '1997-12 8,10,12,22'],
    ],
    ['1997-09-02', 'FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH', ['1997-09 2,4,16,18,30', '1997-10 2,14,16']],
    [
      '1997-09-05',
      'FREQ=MONTHLY;COUNT=10;BYDAY=1FR',
      [
        '1997-09 5',
        '1997-10 3',
        '1997-11 7',
        '1997-12 5',
        '1998-01 2',
        '1998-02 6',
        '1998-03 6',
        '1998-04 3',
        '1998-05 1',
      ].concat('1998-06 5'),
    ],
    [
      '1997-09-05',
      'FREQ=MONTHLY;UNTIL=19971224T000000Z;BYDAY=1FR',
      ['1997-09 5', '1997-10 3', '1997-11 7', '1997-12 5'],
    ],
    [
      '1997-09-07',
      'FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU',
      ['1997-09 7,28', '1997-11 2,30', '1998-01 4,25', '1998-03 1,29', '1998-05 3,31'],
    ],
    [
      '1997-09-22',
      'FREQ=MONTHLY;COUNT=6;BYDAY=-2MO',
      ['1997-09 22', '1997-10 20', '1997-11 17', '1997-12 22', '1998-01 19', '1998-02 16'],
    ],
    [
      '1997-09-02',
      'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15',
      ['1997-09 2,15', '1997-10 2,15', '1997-11 2,15', '1997-12 2,15', '1998-01 2,15'],
    ],
    [
      '1997-09-30',
      'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1',
      ['1997-09 30', '1997-10 1,31', '1997-11 1,30', '1997-12 1,31', '1998-01 1,31', '1998-02 1'],
    ],
    [
      '1997-09-10',
      'FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15',
      ['1997-09 10-15', '1999-03 10-13'],
    ],
    ['1997-06-10', 'FREQ=YEARLY;COUNT=10;BYMONTH=6,7', JUNE_JULY],
    ['1997-03-10', 'FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3', ['1997-03 10', ...SPRINGS]],
    [
      '1997-01-01',
      'FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200',
      [
        '1997-01 1',
        '1997-04 10',
        '1997-07 19',
        '2000-01 1',
        '2000-04 9',
        '2000-07 18',
        '2003-01 1',
        '2003-04 10',
      ].concat('2003-07 19', '2006-01 1'),
    ],
    ['1997-09-04', 'FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3', ['1997-09 4', '1997-10 7', '1997-11 6']],
    ['1997-08-05', 'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO', ['1997-08 5,10,19,24']],
    ['1997-08-05', 'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU', ['1997-08 5,17,19,31']],
    ['2007-01-15', 'FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5', ['2007-01 15,30', '2007-02 15', '2007-03 15,30']],
  ])('from %s %s', (firstOn, rrule, expected) => {
    expect(expanded(firstOn, rrule)).toEqual(starts(...expected));
  });
});

// The RFC prints the first dates of these and then "...".
describe('recurrences without end, RFC 5545 section 3.8.5.3', () => {
  it.each([
    ['1997-09-02', 'FREQ=DAILY;INTERVAL=2', ['1997-09 2,4,6,8']],
    [
      '1997-09-02',
      'FREQ=WEEKLY;INTERVAL=2;WKST=SU',
      ['1997-09 2,16,30', '1997-10 14,28', '1997-11 11,25', '1997-12 9,23', '1998-01 6,20', '1998-02 3,17'],
    ],
    [
      '1997-09-28',
      'FREQ=MONTHLY;BYMONTHDAY=-3',
      ['1997-09 28', '1997-10 29', '1997-11 28', '1997-12 29', '1998-01 29', '1998-02 26'],
    ],
    [
      '1997-09-02',
      'FREQ=MONTHLY;INTERVAL=2;BYDAY=TU',
      ['1997-09 2,9,16,23,30', '1997-11 4,11,18,25', '1998-01 6,13,20,27', '1998-03 3,10,17,24,31'],
    ],
    ['1997-05-19', 'FREQ=YEARLY;BYDAY=20MO', ['1997-05 19', '1998-05 18', '1999-05 17']],
    ['1997-05-12', 'FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO', ['1997-05 12', '1998-05 11', '1999-05 17']],
    ['1997-03-13', 'FREQ=YEARLY;BYMONTH=3;BYDAY=TH', ['1997-03 13,20,27', '1998-03 5,12,19,26', '1999-03 4,11,18,25']],
    [
      '1997-06-05',
      'FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8',
      [
        '1997-06 5,12,19,26',
        '1997-07 3,10,17,24,31',
        '1997-08 7,14,21,28',
        '1998-06 4,11,18,25',
        '1998-07 2,9,16,23,30',
      ].concat('1998-08 6,13,20,27', '1999-06 3,10,17,24', '1999-07 1,8,15,22,29', '1999-08 5,12,19,26'),
    ],
    [
      '1997-09-13',
      'FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13',
      [
        '1997-09 13',
        '1997-10 11',
        '1997-11 8',
        '1997-12 13',
        '1998-01 10',
        '1998-02 7',
        '1998-03 7',
        '1998-04 11',
      ].concat('1998-05 9', '1998-06 13'),
    ],
    [
      '1996-11-05',
      'FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8',
      ['1996-11 5', '2000-11 7', '2004-11 2'],
    ],
    [
      '1997-09-29',
      'FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2',
      ['1997-09 29', '1997-10 30', '1997-11 27', '1997-12 30', '1998-01 29', '1998-02 26', '1998-03 30'],
    ],
  ])('from %s %s', (firstOn, rrule, expected) => {
    const printed = starts(...expected);
    expect(expanded(firstOn, rrule).slice(0, printed.length)).toEqual(printed);
  });

  it('names the Fridays that are a 13th, without the excepted first start', () => {
    const rrule = 'FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13';
    const printed = starts('1998-02 13', '1998-03 13', '1998-11 13', '1999-08 13', '2000-10 13');
    expect(expanded('1997-09-02', rrule, ['1997-09-02T09:00']).slice(0, 5)).toEqual(printed);
  });

  it('recurs every 20 minutes from 9:00 to 16:40 each day', () => {
    const rrule = 'FREQ=DAILY;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40';
    const day = expanded('1997-09-02', rrule).slice(0, 25);
    expect(day.slice(0, 4)).toEqual(['1997-09-02T09:00', '1997-09-02T09:20', '1997-09-02T09:40', '1997-09-02T10:00']);
    expect(day.slice(23)).toEqual(['1997-09-02T16:40', '1997-09-03T09:00']);
  });

  it('keeps 9:00 on the wall when daylight saving time ends on 26 October 1997', () => {
    const rule = { zone: ZONE, startsLocal: '1997-10-25T09:00', minutes: 10, rrule: 'FREQ=DAILY;COUNT=2' };
    const window = { startMs: toInstantMs('1997-10-25T00:00', ZONE), endMs: toInstantMs('1997-10-28T00:00', ZONE) };
    const instants = expandRule(rule, window).map(({ startMs }) => new Date(startMs).toISOString());
    expect(instants).toEqual(['1997-10-25T13:00:00.000Z', '1997-10-26T14:00:00.000Z']);
  });
});
