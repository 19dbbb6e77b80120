import type { LabOrderDocument, LabOrderView, SendLabOrder } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import {
  Clinic,
  LabExchange,
  LabStep,
  Laboratory,
  Organisation,
  Prescription,
  SentOrder,
  leaveBatches,
  release,
  uuidv7,
} from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { dropPlannedLegs } from '../booking/place-lab-work.js';
import { personOf } from '../capture/person.js';
import { loadStage, type StageRecord } from '../capture/stage-record.js';
import { clinicOfStage, visitOfStage } from '../capture/stage-visit.js';
import { WrongStateError } from '../errors.js';
import { noteOrder } from './note-order.js';
import { viewOrder } from './order-view.js';

/**
 * Sends the signed work of a stage to a laboratory of its own. Time that our own benches kept for it is given back, and
 * until the laboratory answers the steps wait for it; the needed-by date stands in the place of their end.
 *
 * @throws {RequestInvalidError} for a laboratory that takes no orders, or when nothing says by when it is needed
 * @throws {WrongStateError} when the work is not signed, or has begun
 */
export async function sendOrder(
  tx: EntityManager,
  actor: Actor,
  { stageId, laboratoryId, neededBy }: SendLabOrder,
  now: Date,
): Promise<LabOrderView> {
  const sentBy = personOf(actor, 'An order is sent by a person.');
  const record = await loadStage(tx, actor, stageId, { lock: true });
  const { stage, treatmentCase } = record;
  const laboratory = await requirePartner(tx, laboratoryId);
  const prescription = await tx.findOneBy(Prescription, { stageId, supersededAt: IsNull() });
  if (prescription === null) throw new WrongStateError('The work order', 'not signed', 'a signed one');
  const steps = stepsToSend(record);
  const due = await dueOf(tx, record, neededBy, now);
  const id = uuidv7();
  const ids = steps.map((step) => step.id);
  await tx.insert(SentOrder, { id, caseId: stage.caseId, stageId, laboratoryId, sentBy });
  await tx.insert(LabExchange, {
    id,
    practiceOrganisationId: actor.organisationId,
    laboratoryOrganisationId: laboratory.partnerOrganisationId,
    caseNumber: treatmentCase.number,
    orderDocument: await documentOf(tx, record, steps, prescription),
    neededBy: due,
    state: 'ordered',
    createdAt: now,
  });
  await leaveBatches(tx, ids);
  await release(tx, { labStepIds: ids });
  await dropPlannedLegs(tx, stage.caseId, now, [stage.code]);
  await tx.update(
    LabStep,
    { id: In(ids) },
    {
      ...{ laboratoryId, orderId: id, workCentreId: null, placeId: null, batchId: null, holdId: null, segments: [] },
      ...{ startsAt: now, endsAt: due, state: 'paused', stateReason: `Waits for the answer of ${laboratory.name}` },
      version: () => 'version + 1',
    },
  );
  const what = `The work after ${stage.code} was ordered from ${laboratory.name}, needed by ${due.toISOString()}.`;
  await noteOrder(tx, actor, { id, caseId: stage.caseId, kind: 'lab-order-sent', what }, now);
  return viewOrder(tx, actor, id);
}

async function requirePartner(
  tx: EntityManager,
  laboratoryId: string,
): Promise<Laboratory & { readonly partnerOrganisationId: string }> {
  const laboratory = await tx.findOneBy(Laboratory, { id: laboratoryId });
  if (laboratory?.partnerOrganisationId != null) return laboratory as Laboratory & { partnerOrganisationId: string };
  const accepted = 'a laboratory of its own that the practice orders from';
  throw new RequestInvalidError([{ path: 'laboratoryId', problem: 'takes no orders', accepted }]);
}

/** The steps that follow the stage, in the order of the path; what anybody has begun is not sent away. */
function stepsToSend({ rows, stage, chain }: StageRecord): LabStep[] {
  const own = rows.steps.filter(({ afterStage, state }) => afterStage === stage.code && state !== 'discarded');
  const toCome = own.filter(({ state }) => state !== 'finished');
  const begun = own.find(({ state }) => !['unplanned', 'planned', 'ready', 'finished'].includes(state));
  if (begun !== undefined) throw new WrongStateError(`The step ${begun.code}`, begun.state, 'work that has not begun');
  if (toCome.length === 0)
    throw new WrongStateError(`Stage ${stage.code}`, 'not followed by work to be made', 'a stage that is');
  const position = new Map(chain.steps.map(({ code }, index) => [code, index]));
  return toCome.sort((one, other) => (position.get(one.code) ?? 0) - (position.get(other.code) ?? 0));
}

async function dueOf(
  tx: EntityManager,
  { rows, chain, stage }: StageRecord,
  neededBy: string | undefined,
  now: Date,
): Promise<Date> {
  const accepted = `an instant after ${now.toISOString()}`;
  if (neededBy !== undefined) {
    if (new Date(neededBy) > now) return new Date(neededBy);
    throw new RequestInvalidError([{ path: 'neededBy', problem: 'has passed', accepted }]);
  }
  const next = chain.phases.find(({ afterStage }) => afterStage === stage.code)?.beforeStage;
  const row = rows.stages.findLast(({ code, state }) => code === next && state !== 'repeated' && state !== 'dropped');
  const visit = row === undefined ? null : await visitOfStage(tx, row.id);
  if (visit !== null && visit.startsAt > now) return visit.startsAt;
  throw new RequestInvalidError([{ path: 'neededBy', problem: 'is left out and no visit says it', accepted }]);
}

/** Case number, codes and values: the prescription holds no identity, and nothing else of the case is added. */
async function documentOf(
  tx: EntityManager,
  record: StageRecord,
  steps: readonly LabStep[],
  { content }: Prescription,
): Promise<LabOrderDocument> {
  const { stage, chain } = record;
  const { name: practice } = await tx.findOneByOrFail(Organisation, { id: stage.organisationId });
  const { name: clinic } = await tx.findOneByOrFail(Clinic, { id: await clinicOfStage(tx, record) });
  const signed = content as Readonly<Record<string, unknown>> & { readonly objects?: string[] };
  return {
    practice,
    clinic,
    stage: stage.code,
    round: stage.round,
    arches: stage.arches,
    steps: steps.map(({ code, arches, round }) => ({
      code,
      arches,
      round,
      title: chain.steps.find((step) => step.code === code)?.title ?? code,
    })),
    objects: signed.objects ?? [],
    prescription: signed,
  };
}
