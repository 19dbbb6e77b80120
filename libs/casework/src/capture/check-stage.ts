import type { Verdict } from '@archwright/measures';
import { Capture, appendCaseEvent, enqueueOutbox } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { serviceActor } from '../actor.js';
import { raiseAlert, withdrawCorrectedAlerts, type RaisedVerdict } from '../remakes/raise-alert.js';
import { loadCaptured } from './captured.js';
import { judgeStage } from './judge-stage.js';
import { keepVerdicts, type KeptVerdict } from './keep-verdicts.js';
import { pauseForLateFinding, yieldPauses } from './late-finding.js';
import { changeStage, loadStage, type StageRecord } from './stage-record.js';

/**
 * Evaluates everything captured at a stage and acts on it: keeps the verdicts, raises an alert where the case has to go
 * back, pauses the next point of no return when the visit is over. Safe to run twice: a checked capture is left alone.
 */
export async function checkStage(
  tx: EntityManager,
  { organisationId, stageId, captureId }: { organisationId: string; stageId: string; captureId: string },
  now: Date,
): Promise<void> {
  const record = await loadStage(tx, serviceActor(organisationId), stageId, { lock: true });
  const capture = await tx.findOneBy(Capture, { id: captureId, stageId });
  if (capture === null || capture.checkedAt !== null) return;
  const captured = await loadCaptured(tx, [stageId]);
  const verdicts = await judgeStage(tx, record, captured.get(stageId));
  const kept = await keepVerdicts(tx, { captureId, stageId, at: now }, verdicts);
  await tx.update(Capture, { id: captureId }, { checkedAt: now });
  await enqueueOutbox(tx, 'screen-capture', { organisationId, captureId }, now);
  await changeStage(tx, record.stage, {});
  await note(tx, record, captureId, kept, now);
  if (record.stage.state === 'passed') await actOnLateFindings(tx, record, kept, now);
  else await actOnFindings(tx, record, kept, now);
}

async function note(
  tx: EntityManager,
  { stage }: StageRecord,
  captureId: string,
  kept: readonly KeptVerdict[],
  now: Date,
): Promise<void> {
  const count = (kind: Verdict['verdict']) => kept.filter(({ verdict }) => verdict.verdict === kind).length;
  const body = {
    stage: stage.code,
    round: stage.round,
    captureId,
    passed: count('pass'),
    cautions: count('caution'),
    failed: count('fail'),
  };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'stage-checked', body, actorId: null, at: now });
}

/** The verdicts that send the case back to an earlier stage. */
export const sendingBack = (kept: readonly KeptVerdict[]): RaisedVerdict[] =>
  kept.flatMap(({ id, verdict }) =>
    verdict.verdict === 'fail' && verdict.action === 'return-to-stage'
      ? [{ id, trigger: verdict.trigger ?? null, reason: verdict.reason, arch: verdict.arch ?? null }]
      : [],
  );

async function actOnFindings(
  tx: EntityManager,
  record: StageRecord,
  kept: readonly KeptVerdict[],
  now: Date,
): Promise<void> {
  const back = sendingBack(kept);
  if (back.length === 0) await withdrawCorrectedAlerts(tx, record, now);
  else await raiseAlert(tx, record, back, now);
}

async function actOnLateFindings(
  tx: EntityManager,
  record: StageRecord,
  kept: readonly KeptVerdict[],
  now: Date,
): Promise<void> {
  const failed = kept.find(({ verdict }) => verdict.verdict === 'fail');
  if (failed === undefined) await yieldPauses(tx, record, now);
  else await pauseForLateFinding(tx, record, { verdictId: failed.id, reason: failed.verdict.reason }, now);
}
