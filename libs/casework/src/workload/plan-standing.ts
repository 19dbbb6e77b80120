import { dateOfDay } from '@archwright/calendar';
import type { WorkloadBound, WorkloadPlan, WorkloadProblem } from '@archwright/planner';
import { outlookOf, type toWorkload } from '@archwright/protocol';
import type { LoadOfDay, PlanStanding } from './search-workload.js';

/** The work of many cases in the planner's terms, and what they stand for. */
export type StatedWorkload = ReturnType<typeof toWorkload>;

/** How a plan of it stands. */
export function standingIn({ problem, names }: StatedWorkload, plan: WorkloadPlan, bound: WorkloadBound): PlanStanding {
  return {
    objective: plan.objective,
    outlook: outlookOf(plan, problem, bound, names),
    load: loadOf(plan, problem, names.axis.slotMinutes),
  };
}

function loadOf({ load }: WorkloadPlan, { centres }: WorkloadProblem, slotMinutes: number): LoadOfDay[] {
  return load.map(({ centre, day, loadSlots, openSlots }) => ({
    workCentreId: centres[centre]?.key ?? '',
    on: dateOfDay(day),
    minutes: loadSlots * slotMinutes,
    openMinutes: openSlots * slotMinutes,
  }));
}
