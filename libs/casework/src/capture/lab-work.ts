import { openGates } from '@archwright/protocol';
import { LabStep, Prescription, appendCaseEvent } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import { loadChain } from '../cases/chain.js';
import { loadEvidence } from './gate-evidence.js';
import { pausedParts } from './paused-parts.js';
import type { StageRecord } from './stage-record.js';

/**
 * Lets the laboratory begin what may begin: planned steps whose work order is signed, whose own gates are closed and that
 * no late finding pauses. Reads the case anew, since the caller has just changed it.
 */
export async function openReadyLabWork(
  tx: EntityManager,
  { stage, treatmentCase }: Pick<StageRecord, 'stage' | 'treatmentCase'>,
  now: Date,
): Promise<void> {
  const caseId = stage.caseId;
  const { chain, progress, rows } = await loadChain(tx, caseId);
  const signed = await tx.findBy(Prescription, { caseId, supersededAt: IsNull() });
  const signedStages = rows.stages.filter(
    (row) => row.state !== 'repeated' && signed.some(({ stageId }) => stageId === row.id),
  );
  const paused = await pausedParts(tx, caseId);
  const evidence = await loadEvidence(tx, { treatmentCase, chain, progress, rows }, now);
  const opened = rows.steps.filter(
    (step) =>
      step.state === 'planned' &&
      signedStages.some(({ code }) => code === step.afterStage) &&
      !paused.has(step.code) &&
      openGates(chain, { kind: 'lab-step', code: step.code }, evidence).length === 0,
  );
  if (opened.length === 0) return;
  await tx.update(
    LabStep,
    { id: In(opened.map(({ id }) => id)) },
    { state: 'ready', stateReason: null, version: () => 'version + 1' },
  );
  const body = { steps: opened.map(({ code }) => code) };
  await appendCaseEvent(tx, { caseId, kind: 'lab-work-opened', body, actorId: null, at: now });
}
