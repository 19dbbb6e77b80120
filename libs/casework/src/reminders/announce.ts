import { messageIdOf } from '@archwright/notices';
import { Notice, appendCaseEvent, enqueueOutbox, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { told } from '../tell.js';
import { askToCallOnce } from './ask-to-call.js';
import { messageDomainOf } from './message-domain.js';
import { isReachedByMail, loadComingVisits, type Visit } from './visits.js';

/** Case event: which times the patient was told, or is to be called about. A later message names the time before from it. */
const VISITS_ANNOUNCED = 'visits-announced';

interface AnnouncedVisit {
  readonly appointmentId: string;
  readonly sequence: number;
  readonly startsAt: string;
}

/** One itinerary per case, which lists provisional visits as well; an unsent one is not repeated, since it lists what stands when it leaves. */
export async function announceVisits(tx: EntityManager, visits: readonly Visit[], now: Date): Promise<void> {
  for (const [caseId, ofCase] of byCase(visits.filter(({ hasDied }) => !hasDied))) {
    const [visit] = ofCase;
    if (visit === undefined) continue;
    await noteAnnounced(tx, caseId, await loadComingVisits(tx, caseId, now), now);
    if (await tx.existsBy(Notice, { caseId, kind: 'itinerary', state: 'scheduled' })) continue;
    if (isReachedByMail(visit)) await notify(tx, visit, { kind: 'itinerary', appointmentId: null }, now);
    else await askToCallOnce(tx, aboutVisit(visit), told('call-times', { number: visit.caseNumber }), now);
  }
}

/**
 * One message per visit that moved or was cancelled, if the patient ever heard of it, or one call for all of them; a visit
 * new to them is announced.
 */
export async function announceChanges(tx: EntityManager, visits: readonly Visit[], now: Date): Promise<void> {
  const changed = visits.filter(({ hasDied }) => !hasDied);
  await tx.query(
    `UPDATE notice SET state = 'withdrawn' WHERE state = 'scheduled' AND appointment_id = ANY ($1::uuid[])`,
    [visits.map(({ id }) => id)],
  );
  const known = new Set((await announcedVisits(tx, caseIdsOf(changed))).map(({ appointmentId }) => appointmentId));
  const isComing = ({ state }: Visit) => state === 'booked' || state === 'provisional';
  await announceVisits(
    tx,
    changed.filter((visit) => isComing(visit) && !known.has(visit.id)),
    now,
  );
  const heardOf = changed.filter(({ id }) => known.has(id));
  for (const [caseId, moved] of byCase(heardOf.filter(isComing))) {
    await noteAnnounced(tx, caseId, moved, now);
    await announceChange(tx, moved, 'visit-moved', now);
  }
  for (const cancelled of byCase(heardOf.filter(({ state }) => state === 'cancelled')).values()) {
    await announceChange(tx, cancelled, 'visit-cancelled', now);
  }
}

const CHANGED = { 'visit-moved': 'call-moved', 'visit-cancelled': 'call-cancelled' } as const;

/** @param visits of one case and patient, at least one */
async function announceChange(
  tx: EntityManager,
  visits: readonly Visit[],
  kind: keyof typeof CHANGED,
  now: Date,
): Promise<void> {
  const [first] = visits;
  if (first === undefined) return;
  if (isReachedByMail(first)) {
    for (const visit of visits) await notify(tx, visit, { kind, appointmentId: visit.id }, now);
    return;
  }
  const what = told(CHANGED[kind], { n: visits.length, number: first.caseNumber });
  await askToCallOnce(tx, aboutVisit(first), what, now);
}

/** A call about a visit. */
const aboutVisit = ({ id, patientId, caseId }: Visit) => ({ patientId, caseId, appointmentId: id });

/** Everything that was announced of these cases, oldest first. */
export async function announcedVisits(tx: EntityManager, caseIds: readonly string[]): Promise<AnnouncedVisit[]> {
  const events: { body: { visits: AnnouncedVisit[] } }[] = await tx.query(
    'SELECT body FROM case_event WHERE case_id = ANY ($1::uuid[]) AND kind = $2 ORDER BY happened_at, sequence',
    [caseIds, VISITS_ANNOUNCED],
  );
  return events.flatMap(({ body }) => body.visits);
}

async function noteAnnounced(tx: EntityManager, caseId: string, visits: readonly Visit[], now: Date): Promise<void> {
  const body = {
    visits: visits.map(({ id, sequence, startsAt }): AnnouncedVisit => ({
      appointmentId: id,
      sequence,
      startsAt: startsAt.toISOString(),
    })),
  };
  await appendCaseEvent(tx, { caseId, kind: VISITS_ANNOUNCED, body, actorId: null, at: now });
}

async function notify(
  tx: EntityManager,
  visit: Visit,
  { kind, appointmentId }: { kind: string; appointmentId: string | null },
  now: Date,
): Promise<void> {
  const id = uuidv7();
  await tx.insert(Notice, {
    id,
    kind,
    recipient: 'patient',
    patientId: visit.patientId,
    caseId: visit.caseId,
    appointmentId,
    subjectSequence: visit.sequence,
    messageId: messageIdOf(id, messageDomainOf(visit.organisationId)),
    state: 'scheduled',
    dueAt: now,
    createdAt: now,
  });
  await enqueueOutbox(tx, 'deliver-notice', { organisationId: visit.organisationId, noticeId: id }, now);
}

function byCase(visits: readonly Visit[]): Map<string, Visit[]> {
  const cases = new Map<string, Visit[]>();
  for (const visit of visits) {
    if (visit.caseId !== null) cases.set(visit.caseId, [...(cases.get(visit.caseId) ?? []), visit]);
  }
  return cases;
}

const caseIdsOf = (visits: readonly Visit[]): string[] => [...byCase(visits).keys()];
