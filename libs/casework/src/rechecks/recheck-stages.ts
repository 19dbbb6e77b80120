import type { RecheckStagesPayload } from '@archwright/contracts';
import { CheckEdition, inOrganisation } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { recheckStage } from './recheck-stage.js';

/** Stages of cases under way at which something was checked and still counts, oldest first: all, or one patient's. */
const TO_JUDGE = `
  SELECT DISTINCT g.id FROM stage g JOIN treatment_case c ON c.id = g.case_id JOIN check_verdict v ON v.stage_id = g.id
  WHERE v.superseded_at IS NULL AND g.state IN ('planned', 'ready', 'in-progress', 'passed')
    AND c.state IN ('enquiry', 'open', 'paused') AND ($1::uuid IS NULL OR c.patient_id = $1)
  ORDER BY g.id`;

const stagesToJudge = (tx: EntityManager, patientId: string | null) =>
  tx.query<{ id: string }[]>(TO_JUDGE, [patientId]);

/**
 * Judges every stage of the cases under way again, each in its own transaction, so that nobody at a chair waits for more
 * than one. Safe to run twice, and after a kill in the middle: what is judged already changes nothing.
 */
export async function recheckStages(
  db: DataSource,
  { organisationId, editionId }: RecheckStagesPayload,
  now: Date,
): Promise<void> {
  const inTurn = <Result>(work: (tx: EntityManager) => Promise<Result>) => inOrganisation(db, organisationId, work);
  const edition = await inTurn((tx) => tx.findOneBy(CheckEdition, { id: editionId }));
  if (edition === null || edition.finishedAt !== null) return;
  const stages = await inTurn((tx) => stagesToJudge(tx, null));
  let verdictsChanged = 0;
  for (const { id } of stages) verdictsChanged += await inTurn((tx) => recheckStage(tx, organisationId, id, now));
  await inTurn((tx) =>
    tx.update(CheckEdition, { id: editionId }, { finishedAt: now, stagesJudged: stages.length, verdictsChanged }),
  );
}

/** Judges the stages of one patient again, of whom something is known now that chooses between ranges. */
export async function recheckPatient(
  tx: EntityManager,
  organisationId: string,
  patientId: string,
  now: Date,
): Promise<void> {
  for (const { id } of await stagesToJudge(tx, patientId)) await recheckStage(tx, organisationId, id, now);
}
