import fc from 'fast-check';
import ICAL from 'ical.js';
import { itineraryCalendar, visitCalendar, type CalendarVisit } from './visit-calendar.js';

const NOW_MS = Date.parse('2027-01-04T10:00:00.123Z');
const PARTIES = { organiser: { mail: 'desk@practice.example', name: 'Riverside' }, attendeeMail: 'ada@example.org' };

function aVisit(changes: Partial<CalendarVisit> = {}): CalendarVisit {
  return {
    uid: '0193a1b2-0000-7000-8000-000000000001',
    sequence: 0,
    startMs: Date.parse('2027-01-28T08:00Z'),
    endMs: Date.parse('2027-01-28T08:45Z'),
    summary: 'Appointment',
    location: '12 Mill Lane, Ludlow',
    url: 'https://practice.example/v/abc',
    state: 'confirmed',
    ...changes,
  };
}

/** Own reading of content lines, independent of any library: unfold, then name, parameters, value. */
function linesOf(content: string): { name: string; parameters: string; value: string }[] {
  return content
    .replaceAll('\r\n ', '')
    .split('\r\n')
    .filter((line) => line !== '')
    .map((line) => {
      const match = /^([A-Z-]+)((?:;[A-Z-]+=(?:"[^"]*"|[^";:,]*))*):(.*)$/su.exec(line);
      if (match === null) throw new Error(`not a content line: ${line}`);
      return { name: match[1] ?? '', parameters: match[2] ?? '', value: match[3] ?? '' };
    });
}

const countOf = (content: string, name: string) => linesOf(content).filter((line) => line.name === name).length;
const valueOf = (content: string, name: string) => linesOf(content).find((line) => line.name === name)?.value;

describe('writing calendars', () => {
  // Source: RFC 5545, sections 3.6 and 3.6.1 (VERSION, PRODID, UID, DTSTAMP, DTSTART), and RFC 5546, sections 3.2.1
  // (PUBLISH: no ATTENDEE), 3.2.2 (REQUEST) and 3.2.5 (CANCEL: SEQUENCE), number of each per one-event message.
  it.each([
    ['REQUEST', visitCalendar(aVisit(), PARTIES, NOW_MS), 1],
    ['CANCEL', visitCalendar(aVisit({ state: 'cancelled', sequence: 2 }), PARTIES, NOW_MS), 1],
    ['PUBLISH', itineraryCalendar([aVisit()], PARTIES.organiser, NOW_MS), 0],
  ])('carries every property that %s requires', (method, { method: given, content }, attendees) => {
    expect(given).toBe(method);
    expect(valueOf(content, 'METHOD')).toBe(method);
    const required = [
      'VERSION',
      'PRODID',
      'METHOD',
      'UID',
      'DTSTAMP',
      'DTSTART',
      'DTEND',
      'ORGANIZER',
      'SUMMARY',
      'SEQUENCE',
      'STATUS',
      'CLASS',
    ];
    expect(required.map((name) => [name, countOf(content, name)])).toEqual(required.map((name) => [name, 1]));
    expect(countOf(content, 'ATTENDEE')).toBe(attendees);
    expect(valueOf(content, 'CLASS')).toBe('PRIVATE');
    expect(valueOf(content, 'DTSTAMP')).toBe('20270104T100000Z');
  });

  it.each([
    ['tentative', 'TENTATIVE', 'REQUEST'],
    ['confirmed', 'CONFIRMED', 'REQUEST'],
    ['cancelled', 'CANCELLED', 'CANCEL'],
  ] as const)('writes a %s visit as %s in a %s', (state, status, method) => {
    const { content } = visitCalendar(aVisit({ state, sequence: 3 }), PARTIES, NOW_MS);
    expect([valueOf(content, 'STATUS'), valueOf(content, 'METHOD'), valueOf(content, 'SEQUENCE')]).toEqual([
      status,
      method,
      '3',
    ]);
  });

  it('is read back by a second library as what was written', () => {
    const { content } = itineraryCalendar([aVisit(), aVisit({ uid: 'second' })], PARTIES.organiser, NOW_MS);
    const events = new ICAL.Component(ICAL.parse(content) as unknown[]).getAllSubcomponents('vevent');
    expect(events).toHaveLength(2);
    const [event] = events;
    expect(String(event?.getFirstPropertyValue('dtstart'))).toBe('2027-01-28T08:00:00Z');
    expect(event?.getFirstPropertyValue('location')).toBe('12 Mill Lane, Ludlow');
    expect(event?.getFirstPropertyValue('organizer')).toBe('mailto:desk@practice.example');
  });

  it('folds at 75 octets, ends every line with CRLF and lets no text break out of its value', () => {
    const text = fc.array(
      fc.constantFrom('ø', 'م', '漢', '😀', 'a', ' ', ';', ',', '\\', '"', ':', '\n', '\r\n', '\u0000', 'END:VEVENT'),
      {
        maxLength: 120,
      },
    );
    fc.assert(
      fc.property(text, text, text, (summary, location, name) => {
        const visit = aVisit({ summary: summary.join(''), location: location.join('') });
        const organiser = { ...PARTIES.organiser, name: `N${name.join('')}` };
        const { content } = visitCalendar(visit, { ...PARTIES, organiser }, NOW_MS);
        for (const line of content.split('\r\n')) {
          expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/[\r\n]/);
        }
        expect(content.endsWith('END:VCALENDAR\r\n')).toBe(true);
        // Nothing gained a property, and the text comes back whole.
        const plain = linesOf(visitCalendar(aVisit(), PARTIES, NOW_MS).content).map((line) => line.name);
        expect(linesOf(content).map((line) => line.name)).toEqual(
          plain.filter((name) => name !== 'LOCATION' || location.join('').replaceAll('\u0000', '') !== ''),
        );
        const event = new ICAL.Component(ICAL.parse(content) as unknown[]).getFirstSubcomponent('vevent');
        expect(event?.getFirstPropertyValue('summary')).toBe(
          visit.summary.replaceAll('\u0000', '').replaceAll('\r\n', '\n'),
        );
      }),
      { seed: 20260105, numRuns: 200 },
    );
  });

  it.each([
    ['a line break in the uid', { uid: 'a\r\nATTENDEE:x' }, 'uid'],
    ['a negative sequence', { sequence: -1 }, 'sequence'],
    ['an end before the start', { endMs: 0 }, 'endMs'],
    ['a start that is no instant', { startMs: Number.NaN }, 'startMs'],
    ['a script as address', { url: 'javascript:alert(1)' }, 'url'],
  ])('refuses %s and names the field', (_, changes, field) => {
    expect(() => visitCalendar(aVisit(changes), PARTIES, NOW_MS)).toThrow(
      expect.objectContaining({
        code: 'interop.calendar-field',
        message: expect.stringContaining(field) as string,
      }) as Error,
    );
  });

  it.each(['ada@example.org\r\nATTENDEE:mailto:x@y.z', 'ada@example.org,eve@example.org', 'ada'])(
    'refuses %j as attendee',
    (attendeeMail) => {
      expect(() => visitCalendar(aVisit(), { ...PARTIES, attendeeMail }, NOW_MS)).toThrow('attendee mail');
    },
  );

  it('encodes what a web address would share with text', () => {
    const { content } = visitCalendar(aVisit({ url: 'https://practice.example/v;a,b' }), PARTIES, NOW_MS);
    expect(valueOf(content, 'URL')).toBe('https://practice.example/v%3Ba%2Cb');
  });

  it('refuses an itinerary without visits', () => {
    expect(() => itineraryCalendar([], PARTIES.organiser, NOW_MS)).toThrow('at least one visit');
  });
});
