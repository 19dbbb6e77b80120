import type { SignPrescription } from '@archwright/contracts';
import { RequestInvalidError, requireVersion } from '@archwright/platform';
import { DisinfectionRecord, Prescription, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { WrongStateError } from '../errors.js';
import { materialsToAvoid } from '../patients/caution-words.js';
import { toothChoiceOf } from '../teeth/tooth-choice.js';
import { loadCaptured } from './captured.js';
import { loadEvidence } from './gate-evidence.js';
import { GateOpenError } from './gate-open-error.js';
import { keepObjects } from './hand-over.js';
import { openReadyLabWork } from './lab-work.js';
import { personOf } from './person.js';
import { stageGates } from './stage-gates.js';
import { changeStage, loadStage, type StageRecord } from './stage-record.js';

/**
 * Signs the complete hand-over of a stage to the laboratory: what was captured, what travels, how it was disinfected. An
 * earlier order of the same go is superseded.
 *
 * @throws {GateOpenError} with exactly what is missing
 * @throws {WrongStateError} when no laboratory work follows the stage, or its visit has not begun
 */
export async function signPrescription(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { version, disinfection, ...order }: SignPrescription & { version: number },
  now: Date,
): Promise<void> {
  const signedBy = personOf(actor, 'A work order is signed by a person.');
  const record = await loadStage(tx, actor, stageId, { lock: true });
  const { stage, treatmentCase } = record;
  requireVersion(version, stage.version);
  requireSignable(record);
  const disinfectedAt = new Date(disinfection.at);
  if (disinfectedAt > now) {
    const accepted = `an instant up to ${now.toISOString()}`;
    throw new RequestInvalidError([{ path: 'disinfection.at', problem: 'lies in the future', accepted }]);
  }
  const { agent } = disinfection;
  await tx.insert(DisinfectionRecord, { id: uuidv7(), stageId, agent, disinfectedAt, recordedBy: signedBy });
  await requireGatesClosed(tx, record, now);
  const objects = await keepObjects(tx, record, { agent, disinfectedAt, recordedBy: signedBy }, now);
  await tx.update(Prescription, { stageId, supersededAt: IsNull() }, { supersededAt: now });
  const prescriptionId = uuidv7();
  await tx.insert(Prescription, {
    id: prescriptionId,
    caseId: stage.caseId,
    stageId,
    laboratoryId: laboratoryOf(record),
    content: await contentOf(tx, record, { order, disinfection, objects }),
    signedBy,
    signedAt: now,
  });
  await changeStage(tx, stage, {});
  const body = { stage: stage.code, round: stage.round, prescriptionId, objects };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'prescription-signed', body, actorId: signedBy, at: now });
  await openReadyLabWork(tx, { stage, treatmentCase }, now);
  await recordAudit(tx, {
    actorId: signedBy,
    action: 'sign-prescription',
    subjectKind: 'stage',
    subjectId: stageId,
    details: { prescriptionId },
    at: now,
  });
}

/** @throws {WrongStateError} when no laboratory work follows the stage, or its visit has not begun */
export function requireSignable({ chain, stage }: StageRecord): void {
  if (!chain.phases.some(({ afterStage }) => afterStage === stage.code)) {
    throw new WrongStateError(`Stage ${stage.code}`, 'not followed by laboratory work', 'a stage that is');
  }
  if (stage.state !== 'in-progress' && stage.state !== 'passed') {
    throw new WrongStateError(`Stage ${stage.code}`, stage.state, 'in-progress or passed');
  }
}

async function requireGatesClosed(tx: EntityManager, record: StageRecord, now: Date): Promise<void> {
  const gates = stageGates(record.chain, record.stage.code, await loadEvidence(tx, record, now));
  const open = gates.filter(({ missing }) => missing.length > 0);
  if (open.length === 0) return;
  const missing = open.flatMap((each) => each.missing);
  throw new GateOpenError('The work order can’t be signed', missing, open);
}

/** The laboratory that the work is planned at; null while it is not planned. */
export function laboratoryOf({ rows, stage }: StageRecord): string | null {
  const own = rows.steps.filter(({ afterStage, state }) => afterStage === stage.code && state !== 'discarded');
  return own.find(({ laboratoryId }) => laboratoryId !== null)?.laboratoryId ?? null;
}

/** Case number, arches, values and codes: what the laboratory works from, and no identity. */
export async function contentOf(
  tx: EntityManager,
  { stage, chain, treatmentCase }: StageRecord,
  given: {
    readonly order: Omit<SignPrescription, 'disinfection'>;
    /** Left out while it is not declared. */
    readonly disinfection?: SignPrescription['disinfection'];
    readonly objects: readonly string[];
  },
): Promise<Readonly<Record<string, unknown>>> {
  const captured = (await loadCaptured(tx, [stage.id])).get(stage.id);
  return {
    caseNumber: treatmentCase.number,
    stage: stage.code,
    round: stage.round,
    arches: stage.arches,
    work: chain.phases.filter(({ afterStage }) => afterStage === stage.code).flatMap(({ steps }) => steps),
    readings: captured?.readings.map(({ reading }) => reading) ?? [],
    tracings: captured?.tracings.map(({ entry }) => entry) ?? [],
    otherCentricRelation: captured?.otherCentricRelation ?? [],
    ...(await chosenTeeth(tx, stage.caseId)),
    ...given.order,
    ...(given.disinfection === undefined ? {} : { disinfection: given.disinfection }),
    avoidMaterials: await materialsToAvoid(tx, treatmentCase.patientId),
    objects: given.objects,
  };
}

/** What was chosen with the patient; what is written on the order itself wins. */
async function chosenTeeth(tx: EntityManager, caseId: string): Promise<object> {
  const choice = await toothChoiceOf(tx, caseId);
  if (choice === null) return {};
  const { shade, mould, arrangement, wish } = choice;
  return Object.fromEntries(Object.entries({ shade, mould, arrangement, wish }).filter(([, said]) => said !== ''));
}
