import { localDate } from '@archwright/calendar';
import type { Filling, LoadView, Told } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import { tell, told } from '../tell.js';
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
        ...tell(riskOf(step, slackMinutes, knowledge, zone)),
        workCentreId: step.workCentreId,
        on: localDate(Math.max(step.startsAt.getTime(), now.getTime()), zone),
        cause: tell(causeOf(step, { knowledge, askedAt: openSince(questions.get(step.id)) }, zone, now)),
      },
    ];
  });
}

function riskOf({ beforeStage, leavesBy }: BenchStep, slack: number, known: StepKnowledge, zone: string): Told {
  return told('risk', {
    title: { title: known.titleOf(beforeStage) },
    leaves: leavesBy === null ? null : { moment: leavesBy.toISOString(), zone },
    ...lateBy(-slack),
  });
}

/** The first that holds: somebody's answer, work before it, its own delay, or the plan itself. */
function causeOf(
  step: BenchStep,
  { knowledge, askedAt }: { readonly knowledge: StepKnowledge; readonly askedAt: Date | null },
  zone: string,
  now: Date,
): Told {
  const title = { title: knowledge.titleOf(step.code) };
  const moment = (at: Date): Filling => ({ moment: at.toISOString(), zone });
  if (askedAt !== null) return told('risk-asked', { title, since: moment(askedAt) });
  if (step.state === 'started' || step.state === 'paused') {
    if (step.endsAt >= now) return told('risk-planned', { title });
    return told('risk-unfinished', { title, on: moment(step.endsAt) });
  }
  const waitsFor = knowledge.waitsFor(step);
  if (waitsFor !== null) return told('risk-waits', { title, for: waitsFor });
  if (step.startsAt < now) return told('risk-not-begun', { title, on: moment(step.startsAt) });
  return told('risk-planned', { title });
}

/** How late, in the unit that suits it. */
function lateBy(minutes: number): { readonly late: number; readonly unit: 'minutes' | 'hours' | 'days' } {
  if (minutes < 60) return { late: minutes, unit: 'minutes' };
  if (minutes < 48 * 60) return { late: Math.round(minutes / 60), unit: 'hours' };
  return { late: Math.round(minutes / 1440), unit: 'days' };
}
