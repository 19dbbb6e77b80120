import {
  addDays,
  intersect,
  localDate,
  openIntervals,
  startOfDayMs,
  subtract,
  totalMinutes,
} from '@archwright/calendar';
import type { ShownProposal, WorkloadProposalKind } from '@archwright/contracts';
import type { CasePlanLabStep } from '@archwright/protocol';
import { segmentsOf } from '../booking/segments.js';
import type { Names } from './names.js';
import { standingOf } from './standing.js';
import type { LoadedWorkload } from './load-workload.js';
import type { PlanStanding, WorkloadFound } from './search-workload.js';

/** Kinds that leave every visit where it is. */
export type StayingKind = Exclude<WorkloadProposalKind, 'free-visits'>;

const TITLES: Readonly<Record<StayingKind, string>> = {
  'within-slack': 'Move work within its slack',
  'level-load': 'Level the load',
  overtime: 'Work overtime',
  'other-laboratory': 'Send work to another laboratory',
};

/**
 * Whether a plan is worth a coordinator's look: better in what its kind looks for. Moving work within its slack is also
 * the way out where work can't stay, as where it should have begun already.
 */
export function isBetter(
  kind: StayingKind,
  found: WorkloadFound,
  { steps, request }: LoadedWorkload,
  than = found.inForce.objective,
): boolean {
  const { objective, moved } = found.best;
  if (moved.length === 0) return false;
  if (objective.violations !== than.violations) return objective.violations < than.violations;
  if (kind === 'level-load') return objective.lateness <= than.lateness && objective.overload < than.overload;
  if (kind === 'within-slack' && (than.disruption > 0 || overdue(steps, request.nowMs) > 0)) return true;
  return objective.lateness < than.lateness;
}

/** Steps that should have begun by now. */
const overdue = (steps: LoadedWorkload['steps'], nowMs: number): number =>
  steps.filter(({ startsAt }) => startsAt !== null && startsAt.getTime() < nowMs).length;

/** A plan as the coordinator is shown it. */
export function showProposal(
  kind: StayingKind,
  found: WorkloadFound,
  workload: LoadedWorkload,
  names: Names,
): ShownProposal {
  const steps = found.best.moved.flatMap(({ caseId, steps: moved, isElsewhere }) =>
    moved.map((step) => ({ caseId, step, isElsewhere })),
  );
  const before = standingOf(found.inForce);
  const after = standingOf(found.best);
  const overtime = kind === 'overtime' ? overtimeOf(found, workload, names) : [];
  return {
    title: TITLES[kind],
    sentence: sentenceOf(
      { moves: steps.length, overdue: overdue(workload.steps, workload.request.nowMs) },
      before,
      after,
    ),
    certainty: certaintyOf(found),
    before,
    after,
    moves: steps
      .sort((one, other) => one.step.startMs - other.step.startMs)
      .map(({ caseId, step, isElsewhere }) => ({
        caseId,
        caseNumber: names.caseNumber(caseId),
        title: step.title,
        workCentre: names.workCentre(step.workCentreId),
        laboratory: isElsewhere ? names.laboratory(step.laboratoryId) : null,
        fromAt: new Date(startOf(workload, caseId, step.code)).toISOString(),
        toAt: new Date(step.startMs).toISOString(),
      })),
    visits: [],
    days: changedDays(found.inForce, found.best, names),
    overtime,
  };
}

function sentenceOf(
  { moves, overdue: behind }: { readonly moves: number; readonly overdue: number },
  before: ShownProposal['before'],
  after: ShownProposal['after'],
): string {
  const steps = moves === 1 ? '1 step moves' : `${String(moves)} steps move`;
  const already = behind === 0 ? '' : `, ${String(behind)} of which should have begun already`;
  const late = `${String(before.lateCases)} to ${String(after.lateCases)}`;
  const full = `${String(before.fullDays)} to ${String(after.fullDays)}`;
  return `${steps}${already}; no visit does. Late cases: ${late}. Full days at a work centre: ${full}.`;
}

/** What is known about how good the plan is in its lateness; what comes after that in the order is not proved. */
function certaintyOf({ verdict, gapPercent, best, sureMinutes }: WorkloadFound): string {
  if (best.objective.violations > 0) return 'Some work finds no allowed time at all; nothing is proved about the rest.';
  if (verdict === 'proved best') return 'Proved: no plan that leaves the visits where they are is less late.';
  if (verdict === 'within') return `At most ${gapPercent.toFixed(1)} % of its lateness could still be saved.`;
  const sure = sureMinutes === 0 ? 'no lateness is' : `only ${String(sureMinutes)} minutes of lateness are`;
  return `The bound is weak here: ${sure} proved to be unavoidable, so a better plan may exist.`;
}

function startOf({ steps }: LoadedWorkload, caseId: string, code: string): number {
  return steps.find((step) => step.caseId === caseId && step.code === code)?.startsAt?.getTime() ?? 0;
}

/** Days whose load differs between two plans. */
export function changedDays(inForce: PlanStanding, best: PlanStanding, names: Names): ShownProposal['days'] {
  const key = ({ workCentreId, on }: { workCentreId: string; on: string }) => `${workCentreId} ${on}`;
  const before = new Map(inForce.load.map((day) => [key(day), day.minutes]));
  return best.load
    .map((day) => ({ ...day, beforeMinutes: before.get(key(day)) ?? 0 }))
    .filter(({ beforeMinutes, minutes }) => beforeMinutes !== minutes)
    .map(({ workCentreId, on, beforeMinutes, minutes, openMinutes }) => ({
      workCentreId,
      workCentre: names.workCentre(workCentreId),
      on,
      beforeMinutes,
      afterMinutes: minutes,
      openMinutes,
    }))
    .sort((one, other) => one.on.localeCompare(other.on) || one.workCentre.localeCompare(other.workCentre));
}

/** Hands-on minutes outside the hours of each work centre, by day. */
function overtimeOf(found: WorkloadFound, { request }: LoadedWorkload, names: Names): ShownProposal['overtime'] {
  const sums = new Map<string, { workCentre: string; on: string; minutes: number }>();
  const centres = request.practice.laboratories.flatMap(({ workCentres }) => workCentres);
  for (const { caseId, steps } of found.best.moved) {
    const chain = request.cases.find((work) => work.caseId === caseId)?.chain;
    for (const step of steps) {
      const centre = centres.find(({ id }) => id === step.workCentreId);
      if (chain === undefined || centre === undefined) continue;
      const window = { startMs: step.startMs, endMs: step.endMs };
      const hours = openIntervals({ rules: centre.working, closures: centre.closures }, window);
      const outside = subtract(handsOn(step, chain), hours);
      for (const span of outside) {
        const on = localDate(span.startMs, request.zone);
        const day = [{ startMs: startOfDayMs(on, request.zone), endMs: startOfDayMs(addDays(on, 1), request.zone) }];
        const key = `${on} ${centre.id}`;
        const sum = sums.get(key) ?? { workCentre: names.workCentre(centre.id), on, minutes: 0 };
        sums.set(key, { ...sum, minutes: sum.minutes + totalMinutes(intersect([span], day)) });
      }
    }
  }
  return [...sums.values()].sort((one, other) => one.on.localeCompare(other.on));
}

function handsOn(step: CasePlanLabStep, chain: Parameters<typeof segmentsOf>[1]) {
  return segmentsOf(step, chain)
    .filter(({ kind }) => kind === 'hands-on')
    .map(({ startsAt, endsAt }) => ({ startMs: Date.parse(startsAt), endMs: Date.parse(endsAt) }));
}
