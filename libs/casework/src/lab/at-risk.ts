import { toLocal } from '@archwright/calendar';
import type { LoadView } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { BenchStep } from './bench-steps.js';
import { slackOfAll } from './dispatch.js';
import { isUnfinished, stretchOf } from './slack.js';
import { knowSteps, type StepKnowledge } from './waits-for.js';

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
  const atRisk: AtRisk[] = [];
  for (const { step, slackMinutes } of late) {
    const knowledge = await knowSteps(tx, step.caseId, now);
    atRisk.push({
      caseId: step.caseId,
      caseNumber: step.caseNumber,
      sentence: sentenceOf(step, slackMinutes, knowledge, zone),
      cause: causeOf(step, knowledge, zone, now),
    });
  }
  return atRisk;
}

function sentenceOf({ beforeStage, leavesBy }: BenchStep, slack: number, known: StepKnowledge, zone: string): string {
  const when = leavesBy === null ? '' : `, which leaves ${localTime(leavesBy, zone)}`;
  return `Work for "${known.titleOf(beforeStage)}"${when}, will be ${lengthOf(-slack)} late as things stand.`;
}

/** The first that holds: somebody's answer, work before it, its own delay, or the plan itself. */
function causeOf(step: BenchStep, known: StepKnowledge, zone: string, now: Date): string {
  const title = known.titleOf(step.code);
  if (step.askedAt !== null) return `A question about "${title}" is open since ${localTime(step.askedAt, zone)}.`;
  if (step.state === 'started' || step.state === 'paused') {
    if (step.endsAt >= now) return `"${title}" is planned to end after the work must leave.`;
    return `"${title}" should have been finished ${localTime(step.endsAt, zone)}.`;
  }
  const waitsFor = known.waitsFor(step);
  if (waitsFor !== null) return `"${title}" waits for: ${waitsFor}.`;
  if (step.startsAt < now) return `"${title}" should have begun ${localTime(step.startsAt, zone)}.`;
  return `"${title}" is planned to end after the work must leave.`;
}

const localTime = (at: Date, zone: string): string => toLocal(at.getTime(), zone).replace('T', ', ');

function lengthOf(minutes: number): string {
  if (minutes < 60) return `${String(minutes)} minutes`;
  if (minutes < 48 * 60) return `${String(Math.round(minutes / 60))} hours`;
  return `${String(Math.round(minutes / 1440))} days`;
}
