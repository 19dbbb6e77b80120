import { colleagueMessage, type ColleagueTopic, type Mail } from '@archwright/notices';
import { TreatmentCase, UserAccount, type Notice } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { Post } from './post.js';

/** The mails of a notice to the people it names; they say the case's number and that something is to be decided, no more. */
export async function colleagueMails(tx: EntityManager, post: Post, notice: Notice): Promise<Mail[]> {
  const { recipient, caseId, messageId } = notice;
  const treated = caseId === null ? null : await tx.findOneBy(TreatmentCase, { id: caseId });
  if (treated === null || recipient === 'patient') return [];
  const people = await recipientsOf(tx, notice);
  return people.flatMap(({ mail, locale }) => {
    if (mail === null) return [];
    const caseUrl = urlFor(post.publicUrl, notice, treated.id);
    const { language, subject, text } = colleagueMessage(topicOf(notice), {
      caseNumber: treated.number,
      caseUrl,
      locale,
    });
    return [{ to: mail, subject, text, language, messageId }];
  });
}

/** A notice names one person, or a clinic's front desk, or a laboratory's people. */
async function recipientsOf(tx: EntityManager, notice: Notice): Promise<UserAccount[]> {
  if (notice.userId !== null) return tx.findBy(UserAccount, { id: notice.userId, disabledAt: IsNull() });
  const accounts = await tx.findBy(UserAccount, { disabledAt: IsNull() });
  return accounts.filter(({ role, clinicIds, laboratoryIds }) => {
    if (notice.recipient === 'clinic') return role === 'front-desk' && clinicIds.includes(notice.clinicId ?? '');
    return notice.recipient === 'laboratory' && role === 'lab' && laboratoryIds.includes(notice.laboratoryId ?? '');
  });
}

const TOPICS: Readonly<Record<string, ColleagueTopic>> = {
  'lab-question': 'question',
  'lab-question-overdue': 'question',
  'lab-question-answered': 'answer',
  'lab-step-rejected': 'rejection',
  'lab-step-late': 'lateness',
  'remake-accepted': 'settled',
};

/** What is left are alerts: the clinic decides, the laboratory waits for it. */
const topicOf = ({ kind, recipient }: Notice): ColleagueTopic =>
  TOPICS[kind] ?? (recipient === 'laboratory' ? 'pause' : 'decision');

function urlFor(publicUrl: string, notice: Notice, caseId: string): string {
  const { recipient, alertId } = notice;
  if (recipient === 'laboratory') return `${publicUrl}/bench/cases/${caseId}`;
  // Where questions stand until they are answered.
  if (topicOf(notice) === 'question') return `${publicUrl}/chair`;
  if (topicOf(notice) === 'lateness') return `${publicUrl}/desk/falls-away`;
  if (recipient === 'clinician' && alertId !== null) return `${publicUrl}/chair/alerts/${alertId}`;
  return `${publicUrl}/desk/cases/${caseId}`;
}
