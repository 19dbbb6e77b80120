import { itineraryCalendar, visitCalendar, type CalendarVisit } from '@archwright/interop';
import {
  RefusedMailError,
  cancelledMessage,
  itineraryMessage,
  languageOf,
  movedMessage,
  reminderMessage,
  type Addressee,
  type Mail,
  type Message,
  type VisitFacts,
} from '@archwright/notices';
import type { OrganisationSettings } from '@archwright/records';
import { replyWays, type Post } from './post.js';
import { isReachedByMail, type Visit } from './visits.js';

/** What a practice says in its own words. */
type OwnWording = Pick<OrganisationSettings, 'messageTexts' | 'ownLines'>;

/** The mail that reminds of one visit, with the visit as a calendar knows it. */
export function reminderMail(
  post: Post,
  visit: Visit,
  messageId: string,
  { messageTexts, ownLines }: OwnWording,
  now: Date,
): Mail {
  const own = { texts: messageTexts, line: ownLines?.[languageOf(visit.locale)] };
  const message = reminderMessage(addresseeOf(visit), factsOf(visit), replyWays(post, visit), own);
  return visitMail(post, visit, { message, messageId }, now);
}

/** @param previousStartsAt what the patient was told before */
export function movedMail(
  post: Post,
  visit: Visit,
  previousStartsAt: Date,
  messageId: string,
  { messageTexts }: OwnWording,
  now: Date,
): Mail {
  const ways = replyWays(post, visit);
  const message = movedMessage(addresseeOf(visit), factsOf(visit), previousStartsAt.getTime(), ways, messageTexts);
  return visitMail(post, visit, { message, messageId }, now);
}

export function cancelledMail(
  post: Post,
  visit: Visit,
  messageId: string,
  { messageTexts }: OwnWording,
  now: Date,
): Mail {
  const message = cancelledMessage(addresseeOf(visit), factsOf(visit), visit.clinicPhone, messageTexts);
  return visitMail(post, visit, { message, messageId }, now);
}

/** All coming visits of a case; not empty. Its links speak of the first one. */
export function itineraryMail(
  post: Post,
  visits: readonly [Visit, ...Visit[]],
  messageId: string,
  { messageTexts }: OwnWording,
  now: Date,
): Mail {
  const [first] = visits;
  const message = itineraryMessage(addresseeOf(first), visits.map(factsOf), replyWays(post, first), messageTexts);
  const calendar = itineraryCalendar(
    visits.map((visit) => calendarVisit(visit, message.calendarTitle)),
    post.from,
    now.getTime(),
  );
  return toMail(first, { message, messageId }, calendar);
}

interface Letter {
  readonly message: Message;
  readonly messageId: string;
}

function visitMail(post: Post, visit: Visit, letter: Letter, now: Date): Mail {
  const parties = { organiser: post.from, attendeeMail: mailOf(visit) };
  return toMail(
    visit,
    letter,
    visitCalendar(calendarVisit(visit, letter.message.calendarTitle), parties, now.getTime()),
  );
}

function toMail(visit: Visit, { message, messageId }: Letter, calendar: Mail['calendar']): Mail {
  const { language, subject, text } = message;
  return { to: mailOf(visit), subject, text, language, messageId, calendar };
}

/** @param summary neutral, since others may see the calendar */
export function calendarVisit(visit: Visit, summary: string): CalendarVisit {
  return {
    uid: visit.uid,
    sequence: visit.sequence,
    startMs: visit.startsAt.getTime(),
    endMs: visit.endsAt.getTime(),
    summary,
    location: visit.address,
    state: visit.state === 'cancelled' ? 'cancelled' : visit.state === 'provisional' ? 'tentative' : 'confirmed',
  };
}

const addresseeOf = ({ givenName, locale, patientZone }: Visit): Addressee => ({
  givenName: givenName ?? '',
  locale,
  zone: patientZone,
});

const factsOf = ({ startsAt, clinicZone, address, state }: Visit): VisitFacts => ({
  startMs: startsAt.getTime(),
  zone: clinicZone,
  address,
  provisional: state === 'provisional',
});

/** Consent and address are read anew when a mail leaves: both may be gone since it was planned. */
function mailOf(visit: Visit): string {
  if (visit.mail === null || !isReachedByMail(visit)) {
    throw new RefusedMailError('address', null, 'a patient who agreed to mail and whose address is known');
  }
  return visit.mail;
}
