import type { CaseView, LabCaseView } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { lineOf, loadOverview } from '../cases/view-case.js';
import { handsOnMinutes, isToBegin, loadCaseSteps } from './bench-steps.js';
import { lastQuestions } from './open-questions.js';
import { knowSteps } from './waits-for.js';
import { workOrdersOf } from './work-orders.js';

/**
 * A case as its laboratory sees it: the work with the visits that it stands between, its dates and the signed orders;
 * nobody's identity, and of what people typed only what is addressed to the laboratory.
 *
 * @throws {RecordNotFoundError} for a case that none of the actor's laboratories works or has worked on
 */
export async function viewLabCase(tx: EntityManager, actor: Actor, caseId: string, now: Date): Promise<LabCaseView> {
  const overview = await loadOverview(tx, actor, caseId, now);
  const { id, version, number, state, title, deliveryOn } = overview.summary;
  const { arches, stages, labSteps, transports } = await lineOf(tx, overview, now);
  const isNextToWork = (code: string) => labSteps.some((step) => step.afterStage === code || step.beforeStage === code);
  return {
    id,
    version,
    number,
    state,
    title,
    deliveryOn,
    zone: overview.zone,
    arches,
    stages: stages.filter((stage) => isNextToWork(stage.code)),
    transports,
    labSteps: await withBench(tx, caseId, labSteps, now),
    workOrders: await workOrdersOf(tx, caseId, overview.chain),
  };
}

/** Adds what the bench must know of each step. */
async function withBench(
  tx: EntityManager,
  caseId: string,
  labSteps: CaseView['labSteps'],
  now: Date,
): Promise<LabCaseView['labSteps']> {
  const planned = new Map((await loadCaseSteps(tx, caseId)).map((step) => [step.id, step] as const));
  const questions = await lastQuestions(
    tx,
    labSteps.map(({ id }) => id),
  );
  const knowledge = await knowSteps(tx, caseId, now);
  return labSteps.map((step) => {
    const bench = planned.get(step.id);
    return {
      ...step,
      laboratoryId: bench?.laboratoryId ?? null,
      workCentreId: bench?.workCentreId ?? null,
      handsOnMinutes: bench === undefined ? null : handsOnMinutes(bench),
      dueBackAt: bench?.dueBackAt?.toISOString() ?? null,
      waitsFor: bench !== undefined && isToBegin(bench) ? knowledge.waitsFor(bench) : null,
      question: questions.get(step.id) ?? null,
    };
  });
}
