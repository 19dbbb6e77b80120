import { LabQuestion, LabStep, TreatmentCase, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { clinicianOfCase } from '../cases/clinician-of-case.js';
import { NotYoursError, RecordNotFoundError, WrongStateError } from '../errors.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';

/** An answer is waited for this long before the clinic's front desk is told too. Project default, no source. */
const ESCALATES_AFTER_MS = 24 * 3_600_000;

/** Asks the case's clinician. The step's clock stands still until the answer. */
export async function askQuestion(
  tx: EntityManager,
  actor: Actor & { readonly userId: string },
  step: LabStep,
  question: string,
  now: Date,
): Promise<void> {
  if (await tx.existsBy(LabQuestion, { labStepId: step.id, answeredAt: IsNull() })) {
    throw new WrongStateError('This step', 'waiting for an answer already', 'one question at a time');
  }
  await tx.insert(LabQuestion, {
    id: uuidv7(),
    caseId: step.caseId,
    labStepId: step.id,
    question,
    askedAt: now,
    askedBy: actor.userId,
    escalatesAt: new Date(now.getTime() + ESCALATES_AFTER_MS),
  });
  const clinician = await clinicianOfCase(tx, step.caseId);
  if (clinician === null) return;
  const about = { kind: 'lab-question', caseId: step.caseId, alertId: null };
  await notifyColleagues(tx, actor.organisationId, about, { recipient: 'clinician', userId: clinician.id }, now);
}

/** The answer lets the step go on; the laboratory starts it again itself. */
export async function answerLabQuestion(
  tx: EntityManager,
  actor: Actor,
  questionId: string,
  answer: string,
  now: Date,
): Promise<void> {
  if (actor.userId === null) throw new NotYoursError('A question is answered by a person.');
  const question = await tx.findOne(LabQuestion, { where: { id: questionId }, lock: { mode: 'pessimistic_write' } });
  const treated = question === null ? null : await tx.findOneBy(TreatmentCase, { id: question.caseId });
  const isSeen =
    actor.role === 'administrator' ||
    treated?.clinicIds.some((clinicId) => actor.clinicIds.includes(clinicId)) === true;
  if (question === null || !isSeen) throw new RecordNotFoundError('question', questionId);
  if (question.answeredAt !== null) throw new WrongStateError('This question', 'answered', 'open');
  await tx.update(LabQuestion, { id: questionId }, { answer, answeredAt: now, answeredBy: actor.userId });
  await tx.increment(LabStep, { id: question.labStepId }, 'version', 1);
  await tellLaboratory(tx, actor.organisationId, question, now);
  await appendCaseEvent(tx, {
    caseId: question.caseId,
    kind: 'lab-question-answered',
    body: { questionId, labStepId: question.labStepId },
    actorId: actor.userId,
    at: now,
  });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'answer-lab-question',
    subjectKind: 'lab-question',
    subjectId: questionId,
    details: {},
    at: now,
  });
}

async function tellLaboratory(
  tx: EntityManager,
  organisationId: string,
  { caseId, labStepId }: LabQuestion,
  now: Date,
): Promise<void> {
  const { laboratoryId } = await tx.findOneByOrFail(LabStep, { id: labStepId });
  if (laboratoryId === null) return;
  const about = { kind: 'lab-question-answered', caseId, alertId: null };
  await notifyColleagues(tx, organisationId, about, { recipient: 'laboratory', laboratoryId }, now);
}

/** @returns how many questions went past their time now; the front desk of each case's clinic is told */
export async function escalateQuestions(tx: EntityManager, now: Date): Promise<number> {
  const [late]: [
    { id: string; organisationId: string; caseId: string; labStepId: string; homeClinicId: string }[],
    number,
  ] = await tx.query(
    `UPDATE lab_question q SET escalated_at = $1 FROM treatment_case c
       WHERE c.id = q.case_id AND q.answered_at IS NULL AND q.escalated_at IS NULL AND q.escalates_at <= $1
       RETURNING q.id, q.organisation_id AS "organisationId", q.case_id AS "caseId", q.lab_step_id AS "labStepId",
         c.home_clinic_id AS "homeClinicId"`,
    [now],
  );
  for (const { id, organisationId, caseId, labStepId, homeClinicId } of late) {
    const about = { kind: 'lab-question-overdue', caseId, alertId: null };
    await notifyColleagues(tx, organisationId, about, { recipient: 'clinic', clinicId: homeClinicId }, now);
    const body = { questionId: id, labStepId };
    await appendCaseEvent(tx, { caseId, kind: 'lab-question-escalated', body, actorId: null, at: now });
  }
  return late.length;
}
