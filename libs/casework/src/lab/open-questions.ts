import type { LabQuestionView, OpenLabQuestions } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadChain } from '../cases/chain.js';

interface QuestionRow extends Omit<LabQuestionView, 'askedAt' | 'escalatesAt' | 'answeredAt'> {
  readonly labStepId: string;
  readonly askedAt: Date;
  readonly escalatesAt: Date;
  readonly answeredAt: Date | null;
}

const QUESTION = `q.id, q.lab_step_id AS "labStepId", q.question, q.asked_at AS "askedAt", asker.name AS "askedBy",
  q.escalates_at AS "escalatesAt", q.answer, q.answered_at AS "answeredAt", answerer.name AS "answeredBy"`;
const PEOPLE = `JOIN user_account asker ON asker.id = q.asked_by LEFT JOIN user_account answerer ON answerer.id = q.answered_by`;

/** The last question about each of these steps, by step; one that was never asked about is not in it. */
export async function lastQuestions(
  tx: EntityManager,
  stepIds: readonly string[],
): Promise<Map<string, LabQuestionView>> {
  const rows: QuestionRow[] = await tx.query(
    `SELECT DISTINCT ON (q.lab_step_id) ${QUESTION} FROM lab_question q ${PEOPLE}
     WHERE q.lab_step_id = ANY ($1::uuid[]) ORDER BY q.lab_step_id, q.asked_at DESC, q.id DESC`,
    [stepIds],
  );
  return new Map(rows.map((row) => [row.labStepId, toView(row)]));
}

/** The instant since which the laboratory waits for an answer; null when it waits for none. */
export const openSince = (question: LabQuestionView | null | undefined): Date | null =>
  question == null || question.answeredAt !== null ? null : new Date(question.askedAt);

interface OpenRow extends QuestionRow {
  readonly caseId: string;
  readonly caseNumber: string;
  readonly givenName: string;
  readonly familyName: string;
  readonly birthOn: string;
  readonly code: string;
  readonly arches: ('upper' | 'lower')[];
  readonly laboratoryName: string;
  readonly zone: string;
}

/** Open questions about cases of the actor's clinics, the one that waits longest first. */
export async function openQuestionsOf(tx: EntityManager, actor: Actor): Promise<OpenLabQuestions> {
  const clinicIds = actor.role === 'administrator' ? null : actor.clinicIds;
  const rows: OpenRow[] = await tx.query(
    `SELECT ${QUESTION}, c.id AS "caseId", c.number AS "caseNumber", i.given_name AS "givenName",
       i.family_name AS "familyName", i.birth_on::text AS "birthOn", s.code, s.arches, b.name AS "laboratoryName", h.zone
     FROM lab_question q ${PEOPLE}
     JOIN lab_step s ON s.id = q.lab_step_id JOIN laboratory b ON b.id = s.laboratory_id
     JOIN treatment_case c ON c.id = q.case_id JOIN clinic h ON h.id = c.home_clinic_id
     JOIN patient_identity i ON i.patient_id = c.patient_id
     WHERE q.answered_at IS NULL AND ($1::uuid[] IS NULL OR c.clinic_ids && $1::uuid[])
     ORDER BY q.asked_at, q.id`,
    [clinicIds],
  );
  const items: OpenLabQuestions['items'] = [];
  for (const row of rows) {
    const { caseId, caseNumber, givenName, familyName, birthOn, code, arches, laboratoryName, zone } = row;
    const { chain } = await loadChain(tx, caseId);
    const step = chain.steps.find((part) => part.code === code)?.title ?? code;
    const patientName = `${givenName} ${familyName}`;
    items.push({ ...toView(row), caseId, caseNumber, patientName, birthOn, step, arches, laboratoryName, zone });
  }
  return { items };
}

const toView = ({
  id,
  question,
  askedAt,
  askedBy,
  escalatesAt,
  answer,
  answeredAt,
  answeredBy,
}: QuestionRow): LabQuestionView => ({
  id,
  question,
  askedAt: askedAt.toISOString(),
  askedBy,
  escalatesAt: escalatesAt.toISOString(),
  answer,
  answeredAt: answeredAt?.toISOString() ?? null,
  answeredBy,
});
