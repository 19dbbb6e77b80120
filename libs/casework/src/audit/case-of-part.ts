import type { EntityManager } from 'typeorm';

/** Tables whose rows belong to one case, and are what entries of the trail speak of. */
const PARTS_OF_A_CASE = [
  'stage',
  'lab_step',
  'hold',
  'remake_alert',
  'arrival_check',
  'call_task',
  'custody_object',
  'lab_question',
  'recall',
  'referral_task',
  'sore_spot',
  'adjustment',
  'sent_order',
  'transfer',
  'prescription',
];

/** Rows that belong to a case by a stage of it, `g`. */
const PARTS_OF_A_STAGE = [
  { from: 'appointment_stage s JOIN stage g ON g.id = s.stage_id', id: 's.appointment_id' },
  { from: 'screening_finding f JOIN stage g ON g.id = f.stage_id', id: 'f.id' },
];

/** SQL for the case of the subject of an entry `e`; no row for what belongs to none, such as a patient or a chair. */
export const CASE_OF_PART = [
  'SELECT id AS case_id FROM treatment_case WHERE id = e.subject_id',
  ...PARTS_OF_A_CASE.map((table) => `SELECT case_id FROM ${table} WHERE id = e.subject_id`),
  ...PARTS_OF_A_STAGE.map(({ from, id }) => `SELECT g.case_id FROM ${from} WHERE ${id} = e.subject_id`),
].join('\nUNION ALL ');

/** Ids of a case and all its parts: the trail is found by them through its index, however long it has become. */
export async function partsOfCase(tx: EntityManager, caseNumber: string): Promise<string[]> {
  const parts = [
    'SELECT c.id',
    ...PARTS_OF_A_CASE.map((table) => `SELECT id FROM ${table} WHERE case_id = c.id`),
    ...PARTS_OF_A_STAGE.map(({ from, id }) => `SELECT ${id} FROM ${from} WHERE g.case_id = c.id`),
  ];
  const rows: { id: string }[] = await tx.query(
    `SELECT part.id FROM treatment_case c CROSS JOIN LATERAL (${parts.join('\nUNION ALL ')}) part (id) WHERE c.number = $1`,
    [caseNumber],
  );
  return rows.map(({ id }) => id);
}
