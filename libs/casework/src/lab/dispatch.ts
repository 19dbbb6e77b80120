import { addDays, startOfDayMs } from '@archwright/calendar';
import type {
  CaseSteps,
  DispatchQuery,
  DispatchStep,
  DispatchView,
  LabQuestionView,
  Told,
} from '@archwright/contracts';
import { LabStep } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireCase } from '../cases/case-access.js';
import { RecordNotFoundError } from '../errors.js';
import {
  handsOnMinutes,
  isToBegin,
  loadBenchSteps,
  loadCaseSteps,
  requireLaboratory,
  type BenchStep,
} from './bench-steps.js';
import { inEnglish, tell, told } from '../tell.js';
import { reportedLate } from './late-steps.js';
import { lastQuestions, openSince } from './open-questions.js';
import { isUnfinished, slackMinutes, stretchOf } from './slack.js';
import { knowCases, type StepKnowledge } from './waits-for.js';

/** The work of one day in the laboratory's zone: what is planned for it, and what earlier days left unfinished. */
export async function dispatchOf(
  tx: EntityManager,
  actor: Actor,
  { laboratoryId, on, workCentreId }: DispatchQuery,
  now: Date,
): Promise<DispatchView> {
  const { zone } = await requireLaboratory(tx, actor, laboratoryId);
  const from = new Date(startOfDayMs(on, zone));
  const until = new Date(startOfDayMs(addDays(on, 1), zone));
  const all = await loadBenchSteps(tx, laboratoryId, { from, until });
  const slack = slackOfAll(all, now);
  const listed = all.filter(
    (step) =>
      step.startsAt < until &&
      (step.endsAt > from || (isUnfinished(step) && from <= now)) &&
      (workCentreId === undefined || step.workCentreId === workCentreId),
  );
  const known = await knowWork(tx, listed, now);
  const steps = listed
    .map((step) => toDispatchStep(step, slack.get(step.id) ?? null, known))
    .sort((one, other) => rank(one) - rank(other) || bySlack(one, other) || one.startsAt.localeCompare(other.startsAt));
  return { laboratoryId, on, zone, ...tell(sentenceOf(steps)), order: inEnglish(told('dispatch-order')), steps };
}

/** One step as its bench sees it. */
export async function viewLabStep(tx: EntityManager, actor: Actor, stepId: string, now: Date): Promise<DispatchStep> {
  const row = await tx.findOneBy(LabStep, { id: stepId });
  const step = row === null ? undefined : (await loadCaseSteps(tx, row.caseId)).find(({ id }) => id === stepId);
  if (row === null || step === undefined) throw new RecordNotFoundError('laboratory step', stepId);
  await requireLaboratory(tx, actor, step.laboratoryId);
  const slack = slackOfAll(await loadCaseSteps(tx, step.caseId), now).get(stepId) ?? null;
  return toDispatchStep(step, slack, await knowWork(tx, [step], now));
}

/**
 * The planned work of one case at the actor's laboratories, finished included.
 *
 * @throws {RecordNotFoundError} for a case that the actor may not see
 */
export async function stepsOfCase(tx: EntityManager, actor: Actor, caseId: string, now: Date): Promise<CaseSteps> {
  await requireCase(tx, actor, caseId);
  const all = await loadCaseSteps(tx, caseId);
  const slack = slackOfAll(all, now);
  const own = all.filter(({ laboratoryId }) => actor.role !== 'lab' || actor.laboratoryIds.includes(laboratoryId));
  const known = await knowWork(tx, own, now);
  return { items: own.map((step) => toDispatchStep(step, slack.get(step.id) ?? null, known)) };
}

/** Slack by step id, of every stretch of work. */
export function slackOfAll(steps: readonly BenchStep[], now: Date): Map<string, number | null> {
  const stretches = new Map<string, BenchStep[]>();
  for (const step of steps) stretches.set(stretchOf(step), [...(stretches.get(stretchOf(step)) ?? []), step]);
  return new Map([...stretches.values()].flatMap((stretch) => [...slackMinutes(stretch, now)]));
}

/** What is told about steps beyond their rows: by case, and the questions asked, by step. */
interface WorkKnowledge {
  readonly cases: ReadonlyMap<string, StepKnowledge>;
  readonly questions: ReadonlyMap<string, LabQuestionView>;
  /** Until when the bench has said that it will take; what the clinic has decided stands in the plan. */
  readonly lateUntil: ReadonlyMap<string, Date>;
}

async function knowWork(tx: EntityManager, steps: readonly BenchStep[], now: Date): Promise<WorkKnowledge> {
  const cases = await knowCases(
    tx,
    steps.map(({ caseId }) => caseId),
    now,
  );
  const stepIds = steps.map(({ id }) => id);
  return { cases, questions: await lastQuestions(tx, stepIds), lateUntil: await reportedLate(tx, stepIds) };
}

function toDispatchStep(
  step: BenchStep,
  slack: number | null,
  { cases, questions, lateUntil }: WorkKnowledge,
): DispatchStep {
  const knowledge = cases.get(step.caseId);
  const { id, version, caseId, caseNumber, code, arches, workCentreId, workCentre, placeLabel, state } = step;
  return {
    id,
    version,
    caseId,
    caseNumber,
    code,
    title: knowledge?.titleOf(code) ?? code,
    arches,
    workCentreId,
    workCentre,
    placeLabel,
    startsAt: step.startsAt.toISOString(),
    endsAt: step.endsAt.toISOString(),
    handsOnMinutes: handsOnMinutes(step),
    state,
    dueBackAt: step.dueBackAt?.toISOString() ?? null,
    slackMinutes: slack,
    waitsFor: isToBegin(step) ? (knowledge?.waitsFor(step) ?? null) : null,
    question: questions.get(id) ?? null,
    lateUntil: lateUntil.get(id)?.toISOString() ?? null,
    avoidMaterials: knowledge?.avoidMaterials ?? [],
  };
}

function rank({ state, question }: DispatchStep): number {
  if (state === 'finished') return 2;
  return openSince(question) === null ? 0 : 1;
}

function bySlack(one: DispatchStep, other: DispatchStep): number {
  const [a, b] = [one.slackMinutes ?? Infinity, other.slackMinutes ?? Infinity];
  return a === b ? 0 : a - b;
}

function sentenceOf(steps: readonly DispatchStep[]): Told {
  const unfinished = steps.filter(({ state }) => state !== 'finished');
  if (unfinished.length === 0) return told(steps.length === 0 ? 'dispatch-empty' : 'dispatch-finished');
  const late = unfinished.filter(({ slackMinutes: slack }) => slack !== null && slack < 0).length;
  const waiting = unfinished.filter(({ waitsFor }) => waitsFor !== null).length;
  return told('dispatch', { steps: unfinished.length, waiting, late });
}
