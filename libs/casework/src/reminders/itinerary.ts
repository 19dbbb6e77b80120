import type { ItinerarySent, ItineraryView } from '@archwright/contracts';
import { itineraryCalendar, type CalendarParty } from '@archwright/interop';
import { calendarTitleIn } from '@archwright/notices';
import { recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireCase } from '../cases/case-access.js';
import { WrongStateError } from '../errors.js';
import { announceVisits } from './announce.js';
import { calendarVisit } from './visit-mail.js';
import { isReachedByMail, loadComingVisits, type Visit } from './visits.js';

/** The visits of a case that are still to come; none is a good answer. */
export async function viewItinerary(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  now: Date,
): Promise<ItineraryView> {
  await requireCase(tx, actor, caseId);
  const visits = await loadComingVisits(tx, caseId, now);
  return {
    way: wayTo(visits[0]),
    visits: visits.map(({ id, startsAt, endsAt, clinicZone, clinicName, clinicPhone, address, state }) => ({
      appointmentId: id,
      startsAt: startsAt.toISOString(),
      endsAt: endsAt.toISOString(),
      zone: clinicZone,
      clinicName,
      clinicPhone,
      address,
      isProvisional: state === 'provisional',
    })),
  };
}

/**
 * The same as a calendar file, in the patient's language.
 *
 * @param organiser in whose name mails leave
 * @throws {WrongStateError} when no visit is to come
 */
export async function itineraryFile(
  tx: EntityManager,
  actor: Actor,
  { caseId, organiser }: { readonly caseId: string; readonly organiser: CalendarParty },
  now: Date,
): Promise<string> {
  const visits = await comingVisits(tx, actor, caseId, now);
  const events = visits.map((visit) => calendarVisit(visit, calendarTitleIn(visit.locale)));
  return itineraryCalendar(events, organiser, now.getTime()).content;
}

/**
 * Tells the patient all coming visits once more: by mail, or by a call where mail does not reach them.
 *
 * @throws {WrongStateError} when no visit is to come
 */
export async function sendItinerary(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  now: Date,
): Promise<ItinerarySent> {
  const visits = await comingVisits(tx, actor, caseId, now);
  const way = wayTo(visits[0]);
  await announceVisits(tx, visits, now);
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'itinerary-sent',
    subjectKind: 'case',
    subjectId: caseId,
    details: { way },
    at: now,
  });
  return { way };
}

async function comingVisits(tx: EntityManager, actor: Actor, caseId: string, now: Date): Promise<Visit[]> {
  const { number } = await requireCase(tx, actor, caseId);
  const visits = await loadComingVisits(tx, caseId, now);
  if (visits.length > 0) return visits;
  throw new WrongStateError(`Case ${number}`, 'without a visit to come', 'a case with a visit that is booked');
}

const wayTo = (visit: Visit | undefined): ItinerarySent['way'] =>
  visit !== undefined && isReachedByMail(visit) ? 'mail' : 'call';
