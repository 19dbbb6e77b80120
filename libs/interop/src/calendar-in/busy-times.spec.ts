import fc from 'fast-check';
import { RRuleTemporal } from 'rrule-temporal';
import { readBusyTimes } from './busy-times.js';

const BERLIN = 'Europe/Berlin';
const YEAR_2027 = { startMs: Date.parse('2027-01-01T00:00Z'), endMs: Date.parse('2028-01-01T00:00Z') };

const calendar = (...lines: string[]) =>
  ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//test//EN', ...lines, 'END:VCALENDAR', ''].join('\r\n');
const event = (...lines: string[]) => ['BEGIN:VEVENT', 'UID:e1', 'DTSTAMP:20270101T000000Z', ...lines, 'END:VEVENT'];
const short = (ms: number) => new Date(ms).toISOString().slice(0, 16);

/** Start and end of each busy time, in UTC. */
function busyOf(text: string, zone = BERLIN, window = YEAR_2027): string[] {
  const { busy, problems } = readBusyTimes(text, { zone, window });
  expect(problems).toEqual([]);
  return busy.map(({ startMs, endMs }) => `${short(startMs)}/${short(endMs)}`);
}
const startsOf = (text: string, zone = BERLIN, window = YEAR_2027) =>
  busyOf(text, zone, window).map((busy) => busy.slice(0, 16));

describe('reading busy times', () => {
  it('keeps the wall time of a weekly event through the change to summer time', () => {
    // Central European summer time begins on 28 March 2027 (IANA time zone database).
    const text = calendar(
      ...event(
        'DTSTART;TZID=Europe/Berlin:20270322T090000',
        'DTEND;TZID=Europe/Berlin:20270322T100000',
        'RRULE:FREQ=WEEKLY;COUNT=2',
      ),
    );
    expect(busyOf(text)).toEqual(['2027-03-22T08:00/2027-03-22T09:00', '2027-03-29T07:00/2027-03-29T08:00']);
  });

  it('drops a recurring time that the clock skips and does not count it, but keeps a stated one', () => {
    const daily = calendar(
      ...event('DTSTART;TZID=Europe/Berlin:20270327T023000', 'DURATION:PT30M', 'RRULE:FREQ=DAILY;COUNT=3'),
    );
    expect(startsOf(daily)).toEqual(['2027-03-27T01:30', '2027-03-29T00:30', '2027-03-30T00:30']);
    // RFC 5545, section 3.3.5: the offset before the gap counts.
    expect(startsOf(calendar(...event('DTSTART;TZID=Europe/Berlin:20270328T023000', 'DURATION:PT30M')))).toEqual([
      '2027-03-28T01:30',
    ]);
  });

  it('tells a nominal day from 24 hours across the change', () => {
    const lasting = (duration: string) =>
      busyOf(calendar(...event('DTSTART;TZID=Europe/Berlin:20270327T120000', `DURATION:${duration}`)));
    expect(lasting('P1D')).toEqual(['2027-03-27T11:00/2027-03-28T10:00']);
    expect(lasting('PT24H')).toEqual(['2027-03-27T11:00/2027-03-28T11:00']);
  });

  it('puts whole days and floating times in the zone of the resource', () => {
    const text = calendar(
      ...event('DTSTART;VALUE=DATE:20270328', 'DTEND;VALUE=DATE:20270329'),
      ...event('DTSTART:20270701T090000', 'DTEND:20270701T093000').map((line) => line.replace('UID:e1', 'UID:e2')),
    );
    expect(busyOf(text)).toEqual(['2027-03-27T23:00/2027-03-28T22:00', '2027-07-01T07:00/2027-07-01T07:30']);
    expect(busyOf(text, 'America/New_York')[1]).toBe('2027-07-01T13:00/2027-07-01T13:30');
  });

  it('takes exceptions, extra dates and changed instances into account', () => {
    const text = calendar(
      ...event(
        'DTSTART;TZID=Europe/Berlin:20270104T090000',
        'DTEND;TZID=Europe/Berlin:20270104T093000',
        'RRULE:FREQ=DAILY;UNTIL=20270108T080000Z',
        'EXDATE;TZID=Europe/Berlin:20270105T090000',
        'RDATE;TZID=Europe/Berlin:20270110T150000',
        'RDATE;VALUE=PERIOD:20270111T100000Z/PT2H',
      ),
      ...event(
        'RECURRENCE-ID;TZID=Europe/Berlin:20270106T090000',
        'DTSTART;TZID=Europe/Berlin:20270106T140000',
        'DURATION:PT1H',
      ),
      ...event('RECURRENCE-ID:20270107T080000Z', 'DTSTART;TZID=Europe/Berlin:20270107T090000', 'STATUS:CANCELLED'),
    );
    expect(busyOf(text)).toEqual([
      '2027-01-04T08:00/2027-01-04T08:30',
      '2027-01-06T13:00/2027-01-06T14:00',
      '2027-01-08T08:00/2027-01-08T08:30',
      '2027-01-10T14:00/2027-01-10T14:30',
      '2027-01-11T10:00/2027-01-11T12:00',
    ]);
  });

  it('shifts this and all later instances', () => {
    const text = calendar(
      ...event('DTSTART;TZID=Europe/Berlin:20270315T090000', 'DURATION:PT30M', 'RRULE:FREQ=WEEKLY;COUNT=4'),
      ...event(
        'RECURRENCE-ID;RANGE=THISANDFUTURE;TZID=Europe/Berlin:20270322T090000',
        'DTSTART;TZID=Europe/Berlin:20270323T100000',
        'DURATION:PT1H',
      ),
    );
    expect(busyOf(text)).toEqual([
      '2027-03-15T08:00/2027-03-15T08:30',
      '2027-03-23T09:00/2027-03-23T10:00',
      '2027-03-30T08:00/2027-03-30T09:00',
      '2027-04-06T08:00/2027-04-06T09:00',
    ]);
  });

  it('lets the later revision of an event win and keys each instance by its original start', () => {
    const text = calendar(
      ...event('SEQUENCE:2', 'DTSTART:20270104T100000Z', 'DURATION:PT30M', 'RRULE:FREQ=DAILY;COUNT=2'),
      ...event('SEQUENCE:1', 'DTSTART:20270104T080000Z', 'DURATION:PT30M'),
    );
    const { busy } = readBusyTimes(text, { zone: BERLIN, window: YEAR_2027 });
    expect(busy.map(({ uid, recurrenceId }) => [uid, recurrenceId])).toEqual([
      ['e1', '2027-01-04T10:00:00.000Z'],
      ['e1', '2027-01-05T10:00:00.000Z'],
    ]);
  });

  it('leaves out what does not block: transparent, cancelled, without length, outside the window', () => {
    const outside = { startMs: Date.parse('2027-02-01T00:00Z'), endMs: Date.parse('2027-02-02T00:00Z') };
    const one = ['DTSTART:20270104T100000Z', 'DURATION:PT30M'];
    expect(busyOf(calendar(...event(...one, 'TRANSP:TRANSPARENT')))).toEqual([]);
    expect(busyOf(calendar(...event(...one, 'STATUS:CANCELLED', 'RRULE:FREQ=DAILY')))).toEqual([]);
    expect(busyOf(calendar(...event('DTSTART:20270104T100000Z')))).toEqual([]);
    expect(busyOf(calendar(...event(...one)), BERLIN, outside)).toEqual([]);
    // One that began before and reaches in does count.
    expect(busyOf(calendar(...event('DTSTART:20270131T230000Z', 'DURATION:PT2H')), BERLIN, outside)).toHaveLength(1);
  });

  it('uses the zone that the file defines when its name is no IANA name', () => {
    const text = calendar(
      'BEGIN:VTIMEZONE',
      'TZID:Practice Time',
      'BEGIN:STANDARD',
      'DTSTART:16010101T030000',
      'TZOFFSETFROM:+0200',
      'TZOFFSETTO:+0100',
      'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=10',
      'END:STANDARD',
      'BEGIN:DAYLIGHT',
      'DTSTART:16010101T020000',
      'TZOFFSETFROM:+0100',
      'TZOFFSETTO:+0200',
      'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=3',
      'END:DAYLIGHT',
      'END:VTIMEZONE',
      ...event('DTSTART;TZID=Practice Time:20270101T023000', 'DURATION:PT30M', 'RRULE:FREQ=DAILY'),
    );
    const named = text.replace('TZID=Practice Time', 'TZID=Europe/Berlin');
    expect(busyOf(text)).toHaveLength(364);
    expect(busyOf(text)).toEqual(busyOf(named));
  });

  it('rounds outward to the five-minute grid', () => {
    expect(busyOf(calendar(...event('DTSTART:20270104T100230Z', 'DTEND:20270104T101001Z')))).toEqual([
      '2027-01-04T10:00/2027-01-04T10:15',
    ]);
  });

  it('reads free-busy periods and unfolds long lines', () => {
    const text = calendar(
      'BEGIN:VFREEBUSY',
      'UID:f1',
      'FREEBUSY;FBTYPE=BUSY:20270104T100000Z/PT1H,20270105T1',
      ' 00000Z/20270105T113000Z',
      'FREEBUSY;FBTYPE=FREE:20270106T100000Z/PT1H',
      'END:VFREEBUSY',
    );
    expect(busyOf(text)).toEqual(['2027-01-04T10:00/2027-01-04T11:00', '2027-01-05T10:00/2027-01-05T11:30']);
  });

  // Source: RFC 5545, section 3.8.5.3, America/New_York; placed by hand: EDT is UTC-4, EST UTC-5 from 26 Oct 1997 on.
  it.each([
    ['19970902T090000', 'FREQ=DAILY;COUNT=10', 10, '1997-09-02T13:00', '1997-09-11T13:00'],
    ['19970902T090000', 'FREQ=DAILY;UNTIL=19971224T000000Z', 113, '1997-09-02T13:00', '1997-12-23T14:00'],
    [
      '19970902T090000',
      'FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH',
      8,
      '1997-09-02T13:00',
      '1997-10-16T13:00',
    ],
    ['19970905T090000', 'FREQ=MONTHLY;COUNT=10;BYDAY=1FR', 10, '1997-09-05T13:00', '1998-06-05T13:00'],
    ['19970922T090000', 'FREQ=MONTHLY;COUNT=6;BYDAY=-2MO', 6, '1997-09-22T13:00', '1998-02-16T14:00'],
    ['19970930T090000', 'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1', 10, '1997-09-30T13:00', '1998-02-01T14:00'],
    ['19970904T090000', 'FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3', 3, '1997-09-04T13:00', '1997-11-06T14:00'],
    ['19970610T090000', 'FREQ=YEARLY;COUNT=10;BYMONTH=6,7', 10, '1997-06-10T13:00', '2001-07-10T13:00'],
  ])('expands the standard’s example %s %s', (start, rule, count, first, last) => {
    const window = { startMs: Date.parse('1997-01-01T00:00Z'), endMs: Date.parse('2007-01-01T00:00Z') };
    const text = calendar(...event(`DTSTART;TZID=America/New_York:${start}`, 'DURATION:PT1H', `RRULE:${rule}`));
    const starts = startsOf(text, BERLIN, window);
    expect([starts.length, starts[0], starts.at(-1)]).toEqual([count, first, last]);
  });

  it('agrees with another library on rules in a zone with clock changes', () => {
    const rule = fc.constantFrom(
      'FREQ=DAILY;INTERVAL=3',
      'FREQ=WEEKLY;BYDAY=MO,WE,SU',
      'FREQ=WEEKLY;INTERVAL=2;BYDAY=SU',
      'FREQ=MONTHLY;BYDAY=-1SU',
      'FREQ=MONTHLY;BYMONTHDAY=-1,15',
    );
    // From 4:00 on, so that no time falls into a gap, where the two follow different readings of the standard.
    fc.assert(
      fc.property(rule, fc.integer({ min: 0, max: 300 }), fc.integer({ min: 4, max: 23 }), (rrule, day, hour) => {
        const date = new Date(YEAR_2027.startMs + day * 86_400_000).toISOString().slice(0, 10).replaceAll('-', '');
        const start = `DTSTART;TZID=America/New_York:${date}T${String(hour).padStart(2, '0')}0000`;
        const theirs = new RRuleTemporal({ rruleString: `${start}\nRRULE:${rrule}` })
          .between(new Date(YEAR_2027.startMs), new Date(YEAR_2027.endMs), false)
          .map((instance) => short(instance.epochMilliseconds));
        const ours = startsOf(calendar(...event(start, 'DURATION:PT30M', `RRULE:${rrule}`)));
        // DTSTART always counts for us, also where the rule does not name it.
        expect(ours.filter((instance, index) => index > 0 || theirs.includes(instance))).toEqual(theirs);
      }),
      { seed: 20260105, numRuns: 60 },
    );
  });
});

describe('refusing calendar input', () => {
  const good = event('DTSTART:20270104T100000Z', 'DURATION:PT30M').map((line) => line.replace('UID:e1', 'UID:good'));

  // The bad event follows the good one: its BEGIN stands in line 10.
  it.each([
    [['DTSTART:20270231T100000Z'], 13, 'accepts a date'],
    [['DURATION:PT30M'], 10, 'DTSTART is missing'],
    [['DTSTART;TZID=Nowhere/Land:20270104T100000'], 13, 'neither a VTIMEZONE'],
    [['DTSTART:20270104T100000Z', 'DTEND:20270104T090000Z'], 14, 'before DTSTART'],
    [['DTSTART:20270104T100000Z', 'RRULE:FREQ=DAILY;BYHOUR=25'], 14, 'BYHOUR'],
    [['DTSTART:20270104T100000Z', 'RRULE:FREQ=FORTNIGHTLY'], 14, 'RRULE'],
    [['DTSTART:20270104T100000Z', 'a line without a colon'], 14, 'cannot be read'],
    [['DTSTART:20270104T100000Z', 'EXRULE:FREQ=DAILY'], 14, 'EXDATE'],
    [['DTSTART:20270104T100000Z', 'DTEND;VALUE=DATE:20270105'], 14, 'DTEND must'],
  ])('leaves out %j, names line %i and loads the rest', (lines, line, problem) => {
    const text = calendar(...good, ...event(...lines));
    const answer = readBusyTimes(text, { zone: BERLIN, window: YEAR_2027 });
    expect(answer.busy.map(({ uid }) => uid)).toEqual(['good']);
    expect(answer.problems).toEqual([
      { line, component: 'VEVENT', problem: expect.stringContaining(problem) as string },
    ]);
  });

  it('reports an event without an end and goes on with the next', () => {
    const answer = readBusyTimes(calendar('BEGIN:VEVENT', 'UID:open', 'DTSTART:20270104T100000Z', ...good), {
      zone: BERLIN,
      window: YEAR_2027,
    });
    expect(answer.busy.map(({ uid }) => uid)).toEqual(['good']);
    expect(answer.problems).toEqual([
      { line: 4, component: 'VEVENT', problem: 'begins here but END:VEVENT is missing' },
    ]);
  });

  it.each([
    ['a web page', '<html></html>', 'interop.calendar-not-a-calendar'],
    ['a download that was cut off', calendar(...good).slice(0, -20), 'interop.calendar-cut-off'],
    ['an oversize file', 'x'.repeat(10_000_001), 'interop.calendar-too-large'],
  ])('refuses %s as a whole', (_, text, code) => {
    expect(() => readBusyTimes(text, { zone: BERLIN, window: YEAR_2027 })).toThrow(
      expect.objectContaining({ code }) as Error,
    );
  });

  it('refuses a resource zone that does not exist', () => {
    expect(() => readBusyTimes(calendar(), { zone: 'Mars/Base', window: YEAR_2027 })).toThrow('Mars/Base');
  });

  it('is quick with a rule that never happens', () => {
    expect(
      startsOf(
        calendar(...event('DTSTART:20270104T100000Z', 'DURATION:PT5M', 'RRULE:FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30')),
      ),
    ).toEqual(['2027-01-04T10:00']);
  });
});
