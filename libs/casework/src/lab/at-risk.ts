import { localDate } from '@archwright/calendar';
import type { LoadView } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import { momentInWords } from '../cases/dates-in-words.js';
import type { BenchStep } from './bench-steps.js';
import { slackOfAll } from './dispatch.js';
import { lastQuestions, openSince } from './open-questions.js';
import { isUnfinished, stretchOf } from './slack.js';
import { knowCases, type StepKnowledge } from './waits-for.js';

type AtRisk = LoadView['atRisk'][number];

/** Stretches of work that will not be done in time as things stand, the latest first, each with its cause. */
export async function casesAtRisk(
  tx: EntityManager,
  steps: readonly BenchStep[],
  zone: string,
  now: Date,
): Promise<AtRisk[]> {
  const slack = slackOfAll(steps, now);
  const worst = new Map<string, { step: BenchStep; slackMinutes: number }>();
  for (const step of steps.filter(isUnfinished)) {
    const slackMinutes = slack.get(step.id) ?? null;
    if (slackMinutes === null || slackMinutes >= 0) continue;
    const known = worst.get(stretchOf(step));
    if (known === undefined || slackMinutes < known.slackMinutes) worst.set(stretchOf(step), { step, slackMinutes });
  }
  const late = [...worst.values()].sort((one, other) => one.slackMinutes - other.slackMinutes);
  const lateIds = late.map(({ step }) => step.id);
  const questions = await lastQuestions(tx, lateIds);
  const cases = await knowCases(
    tx,
    late.map(({ step }) => step.caseId),
    now,
  );
  return late.flatMap(({ step, slackMinutes }): AtRisk[] => {
    const knowledge = cases.get(step.caseId);
    if (knowledge === undefined) return [];
    return [
      {
        caseId: step.caseId,
        caseNumber: step.caseNumber,
        sentence: sentenceOf(step, slackMinutes, knowledge, zone),
        workCentreId: step.workCentreId,
        on: localDate(Math.max(step.startsAt.getTime(), now.getTime()), zone),
        cause: causeOf(step, { knowledge, askedAt: openSince(questions.get(step.id)) }, zone, now),
      },
    ];
  });
}

function sentenceOf({ beforeStage, leavesBy }: BenchStep, slack: number, known: StepKnowledge, zone: string): string {
  const when = leavesBy === null ? '' : `, which must leave on ${momentInWords(leavesBy, zone)}`;
  return `Work for "${known.titleOf(beforeStage)}"${when}, will be ${lengthOf(-slack)} late as things stand.`;
}

/** The first that holds: somebody's answer, work before it, its own delay, or the plan itself. */
function causeOf(
  step: BenchStep,
  { knowledge, askedAt }: { readonly knowledge: StepKnowledge; readonly askedAt: Date | null },
  zone: string,
  now: Date,
): string {
  const title = knowledge.titleOf(step.code);
  if (askedAt !== null) return `A question about "${title}" is open since ${momentInWords(askedAt, zone)}.`;
  if (step.state === 'started' || step.state === 'paused') {
    if (step.endsAt >= now) return `"${title}" is planned to end after the work must leave.`;
    return `"${title}" should have been finished on ${momentInWords(step.endsAt, zone)}.`;
  }
  const waitsFor = knowledge.waitsFor(step);
  if (waitsFor !== null) return `"${title}" waits for: ${waitsFor}.`;
  if (step.startsAt < now) return `"${title}" should have begun on ${momentInWords(step.startsAt, zone)}.`;
  return `"${title}" is planned to end after the work must leave.`;
}

function lengthOf(minutes: number): string {
  if (minutes < 60) return counted(minutes, 'minute');
  return minutes < 48 * 60 ? counted(Math.round(minutes / 60), 'hour') : counted(Math.round(minutes / 1440), 'day');
}

const counted = (count: number, unit: string): string => `${String(count)} ${unit}${count === 1 ? '' : 's'}`;
