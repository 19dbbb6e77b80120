import type { OverrideGate } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { requireVersion } from '@archwright/platform';
import { GateOverride, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError, WrongStateError } from '../errors.js';
import { ruleOf, verdictsInForce } from './keep-verdicts.js';
import { loadEvidence } from './gate-evidence.js';
import { answerPauses } from './late-finding.js';
import { personOf } from './person.js';
import { LATE_FINDING, stageGates, type StageGate } from './stage-gates.js';
import { changeStage, loadStage, type StageRecord } from './stage-record.js';

/** A gate that nobody may set aside, or that this stage does not have. */
class GateNotOverridableError extends DomainError {
  constructor(gate: string, sentence: string, accepted: readonly string[]) {
    super('casework.gate-not-overridable', sentence, { gate, accepted });
  }
}

/**
 * A clinician sets an open gate aside, with a reason that stays on the record; a late finding is answered the same way.
 *
 * @throws {GateNotOverridableError} for a gate that protects others, such as disinfection, and for one not of this stage
 */
export async function overrideGate(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { version, gate, reason }: OverrideGate & { version: number },
  now: Date,
): Promise<void> {
  if (actor.role !== 'clinician') throw new NotYoursError('Only a clinician may set a gate aside.');
  const overriddenBy = personOf(actor, 'Only a clinician may set a gate aside.');
  const record = await loadStage(tx, actor, stageId, { lock: true });
  const { stage } = record;
  requireVersion(version, stage.version);
  if (gate === LATE_FINDING) {
    await answerLateFinding(tx, record, { answer: reason, answeredBy: overriddenBy }, now);
  } else {
    const found = requireOverridable(await gatesOf(tx, record, now), gate);
    const rules = await rulesSetAside(tx, stageId, found);
    await tx.insert(GateOverride, { id: uuidv7(), stageId, gate, reason, rules, overriddenAt: now, overriddenBy });
  }
  await changeStage(tx, stage, {});
  const body = { stage: stage.code, round: stage.round, gate };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'gate-overridden', body, actorId: overriddenBy, at: now });
  await recordAudit(tx, {
    actorId: overriddenBy,
    action: 'override-gate',
    subjectKind: 'stage',
    subjectId: stageId,
    details: { gate, reason },
    at: now,
  });
}

async function answerLateFinding(
  tx: EntityManager,
  record: StageRecord,
  given: { readonly answer: string; readonly answeredBy: string },
  now: Date,
): Promise<void> {
  const answered = await answerPauses(tx, record, { ...given, state: 'go-on' }, now);
  if (answered === 0)
    throw new WrongStateError('A late finding of this stage', 'not waiting for an answer', 'an open one');
}

async function gatesOf(tx: EntityManager, record: StageRecord, now: Date): Promise<StageGate[]> {
  return stageGates(record.chain, record.stage.code, await loadEvidence(tx, record, now));
}

/** Failed checks of the stage that no longer stop it: overrides are counted per rule, never per person. */
async function rulesSetAside(tx: EntityManager, stageId: string, { gate }: StageGate): Promise<string[]> {
  if (!gate.requires.some(({ kind }) => kind === 'no-failed-check')) return [];
  const verdicts = await verdictsInForce(tx, [stageId]);
  return [...new Set(verdicts.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => ruleOf(rule)))];
}

function requireOverridable(gates: readonly StageGate[], code: string): StageGate {
  const found = gates.find(({ gate }) => gate.code === code);
  const open = gates.filter(({ gate, missing }) => gate.overridable && missing.length > 0).map(({ gate }) => gate.code);
  if (found === undefined) {
    throw new GateNotOverridableError(code, `This stage has no gate "${code}".`, open);
  }
  if (!found.gate.overridable) {
    const why = `"${found.gate.title}" can't be set aside (${found.gate.source}).`;
    throw new GateNotOverridableError(code, `${why} Still missing: ${found.missing.join('; ') || 'nothing'}.`, open);
  }
  if (found.missing.length === 0) {
    throw new GateNotOverridableError(code, `"${found.gate.title}" is closed: nothing is missing.`, open);
  }
  return found;
}
