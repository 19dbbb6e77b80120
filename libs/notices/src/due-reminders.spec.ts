import fc from 'fast-check';
import { toLocal } from '@archwright/calendar';
import { dueReminders, type ReminderRequest } from './due-reminders.js';

function due(changes: Partial<ReminderRequest>) {
  return dueReminders({
    visitStartsMs: Date.parse('2027-06-10T07:00Z'),
    patientZone: 'Europe/Berlin',
    clinicZone: 'Europe/Berlin',
    consents: ['mail'],
    mailKnown: true,
    nowMs: Date.parse('2026-01-01T00:00Z'),
    ...changes,
  });
}
const instants = (changes: Partial<ReminderRequest>) =>
  due(changes).map(({ dueAtMs }) => new Date(dueAtMs).toISOString().slice(0, 16));

describe('due reminders', () => {
  // Source: RFC 5545, section 3.3.6 (nominal days, exact hours); summer time in Berlin begins on 28 March 2027 and ends
  // in New York on 1 November 2026 (IANA time zone database).
  it.each([
    ['2027-03-29T07:00Z', 'Europe/Berlin', 'P2D', '2027-03-27T08:00', '09:00 local'],
    ['2027-03-29T07:00Z', 'Europe/Berlin', 'PT48H', '2027-03-27T07:00', '08:00 local'],
    ['2026-11-02T14:00Z', 'America/New_York', 'PT48H', '2026-10-31T14:00', '10:00 local'],
    ['2026-11-02T14:00Z', 'America/New_York', 'P2D', '2026-10-31T13:00', '09:00 local'],
  ])('visit %s in %s, %s before: %s (%s)', (starts, zone, lead, expected) => {
    const request = { visitStartsMs: Date.parse(starts), patientZone: zone, clinicZone: zone, leadTimes: [lead] };
    expect(instants(request)).toEqual([expected]);
  });

  it('goes out seven days and 48 hours before, unless the practice says otherwise', () => {
    expect(due({}).map(({ leadMinutes }) => leadMinutes)).toEqual([10_080, 2_880]);
    expect(instants({})).toEqual(['2027-06-03T07:00', '2027-06-08T07:00']);
    expect(instants({ leadTimes: [180], quietHours: null })).toEqual(['2027-06-10T04:00']);
  });

  it('waits for the morning, and leaves on the evening before when the morning is too late', () => {
    // 09:00 in Berlin is 03:00 in New York, where the patient is.
    expect(instants({ patientZone: 'America/New_York', leadTimes: ['P2D'] })).toEqual(['2027-06-08T12:00']);
    // A visit at 07:30; three hours before is night, and 08:00 comes after it.
    expect(instants({ visitStartsMs: Date.parse('2027-06-10T05:30Z'), leadTimes: ['PT3H'] })).toEqual([
      '2027-06-09T17:45',
    ]);
  });

  it('keeps only what lies ahead', () => {
    expect(instants({ nowMs: Date.parse('2027-06-05T00:00Z') })).toEqual(['2027-06-08T07:00']);
    expect(instants({ nowMs: Date.parse('2027-06-09T00:00Z') })).toEqual([]);
  });

  it('merges what the quiet hours bring to one instant, keeping the nearer one', () => {
    const request = { visitStartsMs: Date.parse('2027-06-10T09:00Z'), leadTimes: ['PT5H', 'PT4H', 'PT4H'] };
    expect(due(request)).toEqual([{ channel: 'mail', leadMinutes: 240, dueAtMs: Date.parse('2027-06-10T06:00Z') }]);
  });

  it('becomes a call where mail is not agreed to or no address is known', () => {
    const channels = (changes: Partial<ReminderRequest>) => new Set(due(changes).map(({ channel }) => channel));
    expect(channels({ consents: [] })).toEqual(new Set(['phone']));
    expect(channels({ consents: ['phone'] })).toEqual(new Set(['phone']));
    expect(channels({ mailKnown: false })).toEqual(new Set(['phone']));
    expect(channels({ consents: ['phone', 'mail'] })).toEqual(new Set(['mail']));
  });

  it('never falls into the quiet hours, after the visit or into the past', () => {
    const zone = fc.constantFrom('Europe/Berlin', 'America/New_York', 'Asia/Kolkata', 'Pacific/Auckland');
    const minutes = fc.integer({ min: 1, max: 20_000 });
    const hour = fc.integer({ min: 0, max: 23 }).map((value) => `${String(value).padStart(2, '0')}:00`);
    fc.assert(
      fc.property(
        zone,
        zone,
        minutes,
        fc.integer({ min: 0, max: 700_000 }),
        hour,
        hour,
        (patientZone, clinicZone, lead, at, from, to) => {
          const nowMs = Date.parse('2027-01-01T00:00Z');
          const visitStartsMs = nowMs + at * 60_000;
          const found = due({
            patientZone,
            clinicZone,
            leadTimes: [lead],
            visitStartsMs,
            nowMs,
            quietHours: { from, to },
          });
          for (const { dueAtMs } of found) {
            const time = toLocal(dueAtMs, patientZone).slice(11);
            const quiet = from > to ? time >= from || time < to : time >= from && time < to;
            expect([quiet, dueAtMs < visitStartsMs, dueAtMs > nowMs]).toEqual([false, true, true]);
          }
        },
      ),
      { seed: 20260105, numRuns: 500 },
    );
  });

  it.each([
    [{ leadTimes: ['PT0S'] }, 'notices.reminder-setting'],
    [{ leadTimes: ['two days'] }, 'calendar.text-not-understood'],
    [{ quietHours: { from: '8pm', to: '08:00' } }, 'notices.reminder-setting'],
  ])('refuses %j', (changes, code) => {
    expect(() => due(changes)).toThrow(expect.objectContaining({ code }) as Error);
  });
});
