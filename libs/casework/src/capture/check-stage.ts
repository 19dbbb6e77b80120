import { valueInWords, type Verdict } from '@archwright/measures';
import { Capture, CheckVerdict, appendCaseEvent, enqueueOutbox, uuidv7 } from '@archwright/records';
import { In, IsNull, Not, type EntityManager } from 'typeorm';
import { serviceActor } from '../actor.js';
import { raiseAlert, withdrawCorrectedAlerts, type RaisedVerdict } from '../remakes/raise-alert.js';
import { loadCaptured } from './captured.js';
import { judgeStage } from './judge-stage.js';
import { pauseForLateFinding, yieldPauses } from './late-finding.js';
import { changeStage, loadStage, type StageRecord } from './stage-record.js';

/** A verdict as it was kept. */
interface KeptVerdict {
  readonly id: string;
  readonly verdict: Verdict;
}

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

/** What a verdict is about, beyond its arch: rules that judge several values say one thing of each. */
const ruleKey = ({ rule, measurement, side, region }: Verdict): string =>
  [rule, measurement, side, region].filter((each) => each !== undefined).join('/');

/** The rule without what it was applied to. */
export const ruleOf = (key: string): string => key.split('/')[0] ?? key;

/** Later verdicts take the place of all earlier ones: each check reads everything that counts at the stage. */
async function keepVerdicts(
  tx: EntityManager,
  { captureId, stageId, at }: { captureId: string; stageId: string; at: Date },
  verdicts: readonly Verdict[],
): Promise<KeptVerdict[]> {
  await tx.update(CheckVerdict, { stageId, captureId: Not(captureId), supersededAt: IsNull() }, { supersededAt: at });
  const kept: KeptVerdict[] = [];
  for (const verdict of verdicts) {
    const id = uuidv7();
    const { ruleVersion, arch = null, action, reason, source, standing, cautionText, limit } = verdict;
    await tx.insert(CheckVerdict, {
      id,
      captureId,
      stageId,
      rule: ruleKey(verdict),
      ruleVersion,
      arch,
      verdict: verdict.verdict,
      action,
      reason,
      valueShown: valueInWords(verdict),
      limitShown: limit,
      source,
      standing,
      caution: cautionText === '' ? null : cautionText,
      decidedAt: at,
    });
    kept.push({ id, verdict });
  }
  return kept;
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

async function actOnFindings(
  tx: EntityManager,
  record: StageRecord,
  kept: readonly KeptVerdict[],
  now: Date,
): Promise<void> {
  const back = kept.flatMap(({ id, verdict }): RaisedVerdict[] =>
    verdict.verdict === 'fail' && verdict.action === 'return-to-stage'
      ? [{ id, trigger: verdict.trigger ?? null, reason: verdict.reason, arch: verdict.arch ?? null }]
      : [],
  );
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

/** Verdicts in force at stages, the newest capture's. */
export function verdictsInForce(tx: EntityManager, stageIds: readonly string[]): Promise<CheckVerdict[]> {
  return tx.find(CheckVerdict, {
    where: { stageId: In([...stageIds]), supersededAt: IsNull() },
    order: { id: 'ASC' },
  });
}
