import type { LateWork, WorkloadStanding } from '@archwright/contracts';
import { FULL_PERCENT } from '@archwright/planner';
import type { WorkOutlook } from '@archwright/protocol';
import type { Names } from './names.js';
import type { PlanStanding } from './search-workload.js';

/** A plan in figures that people compare. */
export function standingOf({ outlook, load }: PlanStanding): WorkloadStanding {
  const late = outlook.filter(({ lateMinutes }) => lateMinutes > 0);
  return {
    lateCases: new Set(late.map(({ caseId }) => caseId)).size,
    lateMinutes: late.reduce((sum, { lateMinutes }) => sum + lateMinutes, 0),
    fullDays: load.filter(({ minutes, openMinutes }) => 100 * minutes > FULL_PERCENT * openMinutes).length,
  };
}

/** What will be late, the latest first, each with its cause. */
export function lateWorkOf({ outlook }: PlanStanding, names: Names): LateWork[] {
  return outlook
    .filter(({ lateMinutes }) => lateMinutes > 0)
    .sort((one, other) => other.lateMinutes - one.lateMinutes)
    .map((work) => ({
      caseId: work.caseId,
      caseNumber: names.caseNumber(work.caseId),
      lateMinutes: work.lateMinutes,
      sentence: `Work for "${names.stageBefore(work)}" will be ${lengthOf(work.lateMinutes)} late.`,
      cause: causeOf(work, names),
    }));
}

function causeOf({ caseId, lateMinutes, sureMinutes, longestWait }: WorkOutlook, names: Names): string {
  if (sureMinutes >= lateMinutes) {
    return 'Empty benches would not help: between its visits there is less time than the work takes.';
  }
  if (longestWait === null) return 'It begins too late for what is still to be made.';
  const { step, workCentreId, minutes } = longestWait;
  const waits = `"${names.step(caseId, step)}" waits ${lengthOf(minutes)} for ${names.workCentre(workCentreId)}`;
  return sureMinutes === 0 ? `${waits}.` : `${waits}; ${lengthOf(sureMinutes)} would be late even without.`;
}

function lengthOf(minutes: number): string {
  if (minutes < 120) return `${String(minutes)} minutes`;
  return minutes < 48 * 60 ? `${String(Math.round(minutes / 60))} hours` : `${String(Math.round(minutes / 1440))} days`;
}
