import type { CompleteStage } from '@archwright/contracts';
import { changeStageState } from '@archwright/protocol';
import { Capture, RemakeAlert, Stage, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import { requireVersion } from '@archwright/platform';
import { In, IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { followUpStage } from '../aftercare/follow-ups.js';
import { WrongStateError } from '../errors.js';
import { loadEvidence } from './gate-evidence.js';
import { GateOpenError } from './gate-open-error.js';
import { openReadyLabWork } from './lab-work.js';
import { personOf } from './person.js';
import { missingToPass, stageGates } from './stage-gates.js';
import { changeStage, loadStage, type StageRecord } from './stage-record.js';

/**
 * Ends a stage. Passed: every gate in front of it is closed, and the laboratory may begin what is signed. Repeat: the go
 * is over and another one waits to be planned.
 *
 * @throws {GateOpenError} with exactly what is missing
 * @throws {WrongStateError} when the visit is not under way, a check still runs or an alert waits for a decision
 */
export async function completeStage(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { version, outcome, note }: CompleteStage & { version: number },
  now: Date,
): Promise<void> {
  const completedBy = personOf(actor, 'A stage is completed by a person.');
  const record = await loadStage(tx, actor, stageId, { lock: true });
  const { stage } = record;
  requireVersion(version, stage.version);
  if (stage.state !== 'in-progress') throw new WrongStateError(`Stage ${stage.code}`, stage.state, 'in-progress');
  if (outcome === 'passed') await requirePassable(tx, record, now);
  const state = changeStageState(stage.state, outcome === 'passed' ? 'passed' : 'repeated');
  await changeStage(tx, stage, { state, completedAt: now, completedBy, note: note ?? null });
  const body = { stage: stage.code, round: stage.round, stageId };
  const kind = outcome === 'passed' ? 'stage-completed' : 'stage-repeated';
  await appendCaseEvent(tx, { caseId: stage.caseId, kind, body, actorId: completedBy, at: now });
  if (outcome === 'passed') {
    await openReadyLabWork(tx, record, now);
    await followUpStage(tx, record, now);
  } else await addNextGo(tx, record);
  await recordAudit(tx, {
    actorId: completedBy,
    action: 'complete-stage',
    subjectKind: 'stage',
    subjectId: stageId,
    details: { outcome },
    at: now,
  });
}

async function requirePassable(tx: EntityManager, record: StageRecord, now: Date): Promise<void> {
  const { stage, chain } = record;
  if (await tx.existsBy(Capture, { stageId: stage.id, checkedAt: IsNull() })) {
    throw new WrongStateError(`The check of stage ${stage.code}`, 'still running', 'finished');
  }
  if (await tx.existsBy(RemakeAlert, { stageId: stage.id, state: In(['open', 'planned']) })) {
    throw new WrongStateError(`The alert of stage ${stage.code}`, 'undecided', 'accepted or dismissed with a reason');
  }
  const gates = stageGates(chain, stage.code, await loadEvidence(tx, record, now));
  const missing = missingToPass(gates);
  if (missing.length === 0) return;
  const open = gates.filter((each) => each.missing.length > 0 && !each.closesAtHandOver);
  throw new GateOpenError(`"${record.part.title}" can't be passed`, missing, open);
}

/** Arches that a go still to come covers need no other one. */
async function addNextGo(tx: EntityManager, { stage, rows }: StageRecord): Promise<void> {
  const later = rows.stages.filter((row) => row.code === stage.code && row.round > stage.round);
  const arches = stage.arches.filter((arch) => !later.some((row) => row.arches.includes(arch)));
  if (arches.length === 0) return;
  const { caseId, code, position } = stage;
  const round = Math.max(stage.round, ...later.map((row) => row.round)) + 1;
  await tx.insert(Stage, { id: uuidv7(), caseId, code, position, round, arches, state: 'waiting' });
}
