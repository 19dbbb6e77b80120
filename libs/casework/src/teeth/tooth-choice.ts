import type { ChooseTeeth, ToothChoiceView } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { checkValue } from '@archwright/measures';
import { RequestInvalidError, requireVersion, type FieldProblem } from '@archwright/platform';
import { ToothChoice, UserAccount, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { changeStage, loadStage } from '../capture/stage-record.js';
import { toothListOf } from './tooth-list.js';

/** Nothing was chosen yet; a case's first choice is the next version. */
const NOTHING_CHOSEN = { version: 1, wish: '', arrangement: '', shade: '', mould: '', decidedBy: null, measured: [] };

/** The choice of teeth in force; null while there is none. */
export async function toothChoiceOf(tx: EntityManager, caseId: string): Promise<ToothChoice | null> {
  return tx.findOne(ToothChoice, { where: { caseId }, order: { version: 'DESC' } });
}

/** What was chosen for the case of a stage, and the practice's list to choose from. */
export async function viewToothChoice(tx: EntityManager, actor: Actor, stageId: string): Promise<ToothChoiceView> {
  const { stage } = await loadStage(tx, actor, stageId);
  const list = await toothListOf(tx, actor.organisationId);
  const choice = await toothChoiceOf(tx, stage.caseId);
  if (choice === null) return { ...NOTHING_CHOSEN, recordedAt: null, recordedBy: null, list };
  const { version, wish, arrangement, shade, mould, decidedBy, measured, recordedAt } = choice;
  const person = await tx.findOneBy(UserAccount, { id: choice.recordedBy });
  return {
    ...{ version, wish, arrangement, shade, mould, decidedBy },
    measured: measured as ToothChoiceView['measured'],
    recordedAt: recordedAt.toISOString(),
    recordedBy: person?.name ?? null,
    list,
  };
}

/**
 * Keeps a choice of teeth as a new version; the ones before stay on record.
 *
 * @throws {RequestInvalidError} naming every width that no tooth has
 */
export async function chooseTeeth(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { version, ...given }: ChooseTeeth & { version: number },
  now: Date,
): Promise<void> {
  const recordedBy = personOf(actor, 'Teeth are chosen with a person.');
  const { stage } = await loadStage(tx, actor, stageId, { lock: true });
  const current = (await toothChoiceOf(tx, stage.caseId))?.version ?? NOTHING_CHOSEN.version;
  requireVersion(version, current);
  const problems = given.measured.flatMap(({ target, valueMm }, index) => refused(target, valueMm, index));
  if (problems.length > 0) throw new RequestInvalidError(problems);
  const { caseId, code } = stage;
  const id = uuidv7();
  await tx.insert(ToothChoice, { id, caseId, stageId, version: current + 1, ...given, recordedAt: now, recordedBy });
  await changeStage(tx, stage, {});
  const body = { stage: code };
  await appendCaseEvent(tx, { caseId, kind: 'teeth-chosen', body, actorId: recordedBy, at: now });
  await recordAudit(tx, {
    actorId: recordedBy,
    action: 'choose-teeth',
    subjectKind: 'case',
    subjectId: caseId,
    details: { version: current + 1, decidedBy: given.decidedBy },
    at: now,
  });
}

function refused(target: string, valueMm: number, index: number): FieldProblem[] {
  try {
    checkValue(target, valueMm, 'mm');
    return [];
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return [{ path: `measured.${String(index)}.valueMm`, problem: error.message }];
  }
}
