import { verifyLink, type LinkPurpose, type LinkSubject } from '@archwright/notices';
import { appendCaseEvent, inOrganisation } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { told } from '../tell.js';
import { askToCallOnce } from './ask-to-call.js';
import { loadVisits, type Visit } from './visits.js';

/** What a link in a message may do. */
export type ReplyPurpose = Extract<LinkPurpose, 'confirm' | 'ask-to-move' | 'instructions'>;

/** What the page behind a link shows; no name, since links are forwarded. */
export interface ReplyView {
  readonly locale: string;
  readonly startsAt: Date;
  readonly zone: string;
  readonly clinicName: string;
  readonly address: string;
  /** False once the visit was cancelled, has begun, or the patient has died. */
  readonly stands: boolean;
}

interface Link {
  readonly secret: string;
  readonly purpose: ReplyPurpose;
  readonly token: string;
}

/**
 * The visit that a link speaks of. Changes nothing: mail scanners follow links.
 *
 * @returns null when the visit is gone
 * @throws {LinkError} for a link that was not made here or is past its time
 */
export function viewReply(db: DataSource, link: Link, now: Date): Promise<ReplyView | null> {
  const subject = subjectOf(link, now);
  return inOrganisation(db, subject.organisationId, async (tx) => {
    const visit = await visitOf(tx, subject);
    return visit === undefined ? null : toView(visit, now);
  });
}

/**
 * Does what a link is for: notes that the patient comes, or asks the front desk to call about another time. Doing it
 * again changes nothing more; a visit that no longer stands stays as it is.
 *
 * @throws {LinkError} for a link that was not made here or is past its time
 */
export function giveReply(db: DataSource, link: Link, now: Date): Promise<ReplyView | null> {
  const subject = subjectOf(link, now);
  return inOrganisation(db, subject.organisationId, async (tx) => {
    const visit = await visitOf(tx, subject);
    if (visit === undefined) return null;
    const view = toView(visit, now);
    if (view.stands && link.purpose === 'confirm') await confirm(tx, visit, now);
    if (view.stands && link.purpose === 'ask-to-move') await askToMove(tx, visit, now);
    return view;
  });
}

const subjectOf = ({ secret, purpose, token }: Link, now: Date): LinkSubject =>
  verifyLink(secret, purpose, token, now.getTime());

async function visitOf(tx: EntityManager, { subjectId }: LinkSubject): Promise<Visit | undefined> {
  const [visit] = await loadVisits(tx, [subjectId]);
  return visit;
}

function toView(visit: Visit, now: Date): ReplyView {
  const { locale, startsAt, clinicZone, clinicName, address, state, hasDied } = visit;
  const isBooked = state === 'booked' || state === 'provisional';
  const stands = isBooked && !hasDied && startsAt > now;
  return { locale, startsAt, zone: clinicZone, clinicName, address, stands };
}

async function confirm(tx: EntityManager, visit: Visit, now: Date): Promise<void> {
  const [, changed]: [unknown, number] = await tx.query(
    `UPDATE appointment SET confirmed_by_patient_at = $2, version = version + 1
     WHERE id = $1 AND confirmed_by_patient_at IS NULL`,
    [visit.id, now],
  );
  if (changed === 1) await note(tx, visit, 'visit-confirmed-by-patient', now);
}

async function askToMove(tx: EntityManager, visit: Visit, now: Date): Promise<void> {
  const { id, patientId, caseId } = visit;
  const about = { patientId, caseId, appointmentId: id };
  if (!(await askToCallOnce(tx, about, told('call-asks-to-move'), now))) return;
  await note(tx, visit, 'patient-asked-to-move', now);
}

async function note(tx: EntityManager, { id, caseId }: Visit, kind: string, now: Date): Promise<void> {
  if (caseId === null) return;
  await appendCaseEvent(tx, { caseId, kind, body: { appointmentId: id }, actorId: null, at: now });
}
