import ical, {
  ICalAttendeeRole,
  ICalAttendeeStatus,
  ICalCalendarMethod,
  ICalEventClass,
  ICalEventStatus,
  ICalEventTransparency,
  type ICalCalendar,
} from 'ical-generator';
import { mailAddress, plainName, plainText, uriOf, wholeSecond } from './fields.js';
import { CalendarFieldError } from '../errors.js';

export interface CalendarParty {
  readonly mail: string;
  readonly name: string;
}

/** What a calendar may say of one visit. The title is the caller's and must be neutral: no treatment, no surname. */
export interface CalendarVisit {
  /** Constant through the visit's whole life, a move or a cancellation included. */
  readonly uid: string;
  /** Raised by one whenever time or place changes, and by a cancellation (RFC 5546, section 2.1.4). */
  readonly sequence: number;
  readonly startMs: number;
  readonly endMs: number;
  readonly summary: string;
  readonly location?: string | undefined;
  readonly url?: string | undefined;
  /** `tentative` while the visit is only provisional. */
  readonly state: 'tentative' | 'confirmed' | 'cancelled';
}

const STATUS = {
  tentative: ICalEventStatus.TENTATIVE,
  confirmed: ICalEventStatus.CONFIRMED,
  cancelled: ICalEventStatus.CANCELLED,
} as const;

/**
 * One visit as an iTIP message (RFC 5546) for the person who attends: `REQUEST` while it stands, `CANCEL` once its
 * state is `cancelled`. Times are written in UTC, which needs no VTIMEZONE and names the same instant everywhere.
 *
 * @param nowMs instant of writing, becomes DTSTAMP
 * @throws {CalendarFieldError} when a value would break the file or the standard
 */
export function visitCalendar(
  visit: CalendarVisit,
  parties: { readonly organiser: CalendarParty; readonly attendeeMail: string },
  nowMs: number,
): { method: 'REQUEST' | 'CANCEL'; content: string } {
  const method = visit.state === 'cancelled' ? 'CANCEL' : 'REQUEST';
  const calendar = emptyCalendar(method === 'CANCEL' ? ICalCalendarMethod.CANCEL : ICalCalendarMethod.REQUEST);
  const event = addVisit(calendar, visit, parties.organiser, nowMs);
  // The attendee has no name here: a mail's calendar part is copied by servers that need not know it.
  event.createAttendee({
    email: mailAddress('attendee', parties.attendeeMail),
    role: ICalAttendeeRole.REQ,
    status: ICalAttendeeStatus.NEEDSACTION,
    rsvp: false,
  });
  return { method, content: write(calendar) };
}

/**
 * All visits of a patient as one calendar to be added or subscribed to (`METHOD:PUBLISH`, which has no attendees).
 *
 * @param nowMs instant of writing, becomes DTSTAMP
 * @throws {CalendarFieldError} when a value would break the file or the standard
 */
export function itineraryCalendar(
  visits: readonly CalendarVisit[],
  organiser: CalendarParty,
  nowMs: number,
): { method: 'PUBLISH'; content: string } {
  // RFC 5545, section 3.6: a calendar holds at least one component.
  if (visits.length === 0) throw new CalendarFieldError('visits', 'is empty', 'at least one visit');
  const calendar = emptyCalendar(ICalCalendarMethod.PUBLISH);
  for (const visit of visits) addVisit(calendar, visit, organiser, nowMs);
  return { method: 'PUBLISH', content: write(calendar) };
}

function emptyCalendar(method: ICalCalendarMethod): ICalCalendar {
  return ical({ prodId: { company: 'Archwright', product: 'Visits', language: 'EN' }, method });
}

function addVisit(calendar: ICalCalendar, visit: CalendarVisit, organiser: CalendarParty, nowMs: number) {
  if (!/^[\w.@-]{1,200}$/.test(visit.uid)) {
    throw new CalendarFieldError('uid', 'holds characters outside the safe set', 'letters, digits and . _ @ - only');
  }
  if (!Number.isSafeInteger(visit.sequence) || visit.sequence < 0) {
    throw new CalendarFieldError('sequence', `is ${String(visit.sequence)}`, 'a whole number from 0 on');
  }
  const start = wholeSecond('startMs', visit.startMs);
  const end = wholeSecond('endMs', visit.endMs);
  if (end <= start) throw new CalendarFieldError('endMs', 'is not after startMs', 'an end later than the start');
  const location = plainText(visit.location ?? '');
  return calendar.createEvent({
    id: visit.uid,
    sequence: visit.sequence,
    stamp: new Date(Math.floor(nowMs / 1000) * 1000),
    start,
    end,
    summary: plainText(visit.summary),
    location: location === '' ? null : { title: location },
    url: visit.url === undefined ? null : uriOf(visit.url),
    organizer: { name: plainName('organiser name', organiser.name), email: mailAddress('organiser', organiser.mail) },
    status: STATUS[visit.state],
    transparency: ICalEventTransparency.OPAQUE,
    class: ICalEventClass.PRIVATE,
  });
}

/** RFC 5545, section 3.1, ends every content line with CRLF, the last one too. */
function write(calendar: ICalCalendar): string {
  return `${calendar.toString()}\r\n`;
}
