import type { DeliverNoticePayload } from '@archwright/contracts';
import { Notice, Organisation } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { told } from '../tell.js';
import { announcedVisits } from './announce.js';
import { askToCall } from './ask-to-call.js';
import { colleagueMails } from './colleague-mail.js';
import type { Post } from './post.js';
import { sendOnce, type Outcome } from './send-once.js';
import { cancelledMail, itineraryMail, movedMail } from './visit-mail.js';
import { loadComingVisits, loadVisits, type Visit } from './visits.js';

/**
 * Sends one message that follows a change: to a patient about visits, to colleagues about a case. What it says is read
 * when it leaves; when it no longer holds, it is withdrawn.
 *
 * @throws {TemporaryMailError} when the mail server is to be asked again
 */
export function deliverNotice(
  db: DataSource,
  post: Post,
  { organisationId, noticeId }: DeliverNoticePayload,
  now: Date,
): Promise<void> {
  return sendOnce<Notice>(
    db,
    {
      table: 'notice',
      organisationId,
      id: noticeId,
      load: (tx, id) => tx.findOneBy(Notice, { id }),
      send: (tx, notice) => send(tx, post, notice, now),
      refused: (tx, notice) => callInstead(tx, notice, now),
    },
    now,
  );
}

function send(tx: EntityManager, post: Post, notice: Notice, now: Date): Promise<Outcome> {
  if (notice.recipient !== 'patient') return sendToColleagues(tx, post, notice);
  return notice.appointmentId === null
    ? sendItinerary(tx, post, notice, now)
    : sendChange(tx, post, notice, notice.appointmentId, now);
}

async function sendItinerary(tx: EntityManager, post: Post, notice: Notice, now: Date): Promise<Outcome> {
  const [first, ...rest] = notice.caseId === null ? [] : await loadComingVisits(tx, notice.caseId, now);
  if (first === undefined || first.hasDied) return { state: 'withdrawn' };
  const { settings } = await practiceOf(tx, first);
  await post.mailer.send(itineraryMail(post, [first, ...rest], notice.messageId, settings, now));
  return { state: 'sent' };
}

async function sendChange(
  tx: EntityManager,
  post: Post,
  notice: Notice,
  appointmentId: string,
  now: Date,
): Promise<Outcome> {
  const [visit] = await loadVisits(tx, [appointmentId]);
  if (visit === undefined || visit.hasDied || visit.sequence !== notice.subjectSequence) return { state: 'withdrawn' };
  const { settings } = await practiceOf(tx, visit);
  const mail =
    notice.kind === 'visit-cancelled'
      ? cancelledMail(post, visit, notice.messageId, settings, now)
      : movedMail(post, visit, await toldBefore(tx, visit), notice.messageId, settings, now);
  await post.mailer.send(mail);
  return { state: 'sent' };
}

const practiceOf = (tx: EntityManager, { organisationId }: Visit) =>
  tx.findOneByOrFail(Organisation, { id: organisationId });

/** The time of the last message about this visit that was not withdrawn: one that never left told the patient nothing. */
async function toldBefore(tx: EntityManager, visit: Visit): Promise<Date> {
  const unsent = await tx.findBy(Notice, { appointmentId: visit.id, state: 'withdrawn' });
  const untold = new Set(unsent.map(({ subjectSequence }) => subjectSequence));
  const announced = visit.caseId === null ? [] : await announcedVisits(tx, [visit.caseId]);
  const before = announced.filter(
    ({ appointmentId, sequence }) => appointmentId === visit.id && sequence < visit.sequence && !untold.has(sequence),
  );
  const last = before.at(-1);
  return last === undefined ? visit.startsAt : new Date(last.startsAt);
}

async function sendToColleagues(tx: EntityManager, post: Post, notice: Notice): Promise<Outcome> {
  const mails = await colleagueMails(tx, post, notice);
  for (const mail of mails) await post.mailer.send(mail);
  return { state: mails.length === 0 ? 'withdrawn' : 'sent' };
}

/** What a patient's mailbox refuses is told by telephone; colleagues find it on their screens. */
async function callInstead(tx: EntityManager, notice: Notice, now: Date): Promise<void> {
  if (notice.patientId === null) return;
  const { patientId, caseId, appointmentId } = notice;
  await askToCall(tx, { patientId, caseId, appointmentId }, told('call-refused-mail'), now);
}
