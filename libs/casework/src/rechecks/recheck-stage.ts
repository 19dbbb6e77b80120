import type { Verdict } from '@archwright/measures';
import { Capture, CheckVerdict, appendCaseEvent } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import { serviceActor } from '../actor.js';
import { sendingBack } from '../capture/check-stage.js';
import { loadCaptured } from '../capture/captured.js';
import { judgeStage } from '../capture/judge-stage.js';
import { keepVerdict, rowOf, verdictsInForce, type KeptVerdict } from '../capture/keep-verdicts.js';
import { pauseForLateFinding } from '../capture/late-finding.js';
import { changeStage, loadStage, type StageRecord } from '../capture/stage-record.js';
import { raiseAlert } from '../remakes/raise-alert.js';

const SAID = [
  'verdict',
  'action',
  'reason',
  'valueShown',
  'limitShown',
  'source',
  'standing',
  'caution',
] as const satisfies (keyof ReturnType<typeof rowOf>)[];

/**
 * Judges a stage again by the rules and ranges of today. Verdicts that say the same stay; the others are superseded. What
 * people decided stays: passed stages, overrides, answers and alerts. Only a check that fails now and did not before asks
 * again: it raises an alert, or pauses the next point of no return when the visit is over.
 *
 * @returns how many verdicts changed
 */
export async function recheckStage(
  tx: EntityManager,
  organisationId: string,
  stageId: string,
  now: Date,
): Promise<number> {
  const record = await loadStage(tx, serviceActor(organisationId), stageId, { lock: true });
  // A capture that still waits for its check is judged by today's rules anyway; one that was taken again never is.
  if (await tx.existsBy(Capture, { stageId, checkedAt: IsNull(), supersededAt: IsNull() })) return 0;
  const captured = (await loadCaptured(tx, [stageId])).get(stageId);
  const captureId = captured?.captures.at(-1)?.id;
  if (captureId === undefined) return 0;
  const before = await verdictsInForce(tx, [stageId]);
  const { fresh, gone } = compared(before, await judgeStage(tx, record, captured));
  if (fresh.length + gone.length === 0) return 0;
  await tx.update(CheckVerdict, { id: In(gone.map(({ id }) => id)) }, { supersededAt: now });
  const kept: KeptVerdict[] = [];
  for (const verdict of fresh) kept.push(await keepVerdict(tx, { captureId, stageId, at: now }, verdict));
  await changeStage(tx, record.stage, {});
  const { caseId, code } = record.stage;
  const body = { stage: code, changed: kept.length };
  await appendCaseEvent(tx, { caseId, kind: 'stage-rechecked', body, actorId: null, at: now });
  await askAgain(tx, record, newlyFailed(before, kept), now);
  return kept.length;
}

const subjectOf = ({ rule, arch }: Pick<CheckVerdict, 'rule' | 'arch'>): string => `${rule}|${arch ?? ''}`;

/** What is said now and was not, and the rows that no longer hold. */
function compared(
  before: readonly CheckVerdict[],
  verdicts: readonly Verdict[],
): { fresh: Verdict[]; gone: CheckVerdict[] } {
  const stays = (row: CheckVerdict) =>
    verdicts
      .map(rowOf)
      .some((said) => subjectOf(said) === subjectOf(row) && SAID.every((key) => said[key] === row[key]));
  const staying = before.filter(stays);
  const known = new Set(staying.map(subjectOf));
  return {
    fresh: verdicts.filter((verdict) => !known.has(subjectOf(rowOf(verdict)))),
    gone: before.filter((row) => !staying.includes(row)),
  };
}

function newlyFailed(before: readonly CheckVerdict[], kept: readonly KeptVerdict[]): KeptVerdict[] {
  const failed = new Set(before.filter(({ verdict }) => verdict === 'fail').map(subjectOf));
  return kept.filter(({ verdict }) => verdict.verdict === 'fail' && !failed.has(subjectOf(rowOf(verdict))));
}

async function askAgain(
  tx: EntityManager,
  record: StageRecord,
  failed: readonly KeptVerdict[],
  now: Date,
): Promise<void> {
  const [first] = failed;
  if (first === undefined) return;
  if (record.stage.state === 'passed') {
    await pauseForLateFinding(tx, record, { verdictId: first.id, reason: first.verdict.reason }, now);
    return;
  }
  const back = sendingBack(failed);
  if (back.length > 0) await raiseAlert(tx, record, back, now);
}
