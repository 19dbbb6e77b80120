import type { LabStepState } from '@archwright/contracts';

/** What is known of the work for one visit. */
export interface WorkForVisit {
  readonly visitAt: Date;
  /** Titles of what is not in the clinic. */
  readonly missing: readonly string[];
  /** Why something of it can't come as planned, such as a quarantine; null when nothing is known against it. */
  readonly obstacle: string | null;
  readonly steps: readonly PlannedStep[];
  /** When the last run that brings it is planned to arrive; null when it is carried over as soon as it is done. */
  readonly runArrivesAt: Date | null;
}

interface PlannedStep {
  readonly title: string;
  readonly state: LabStepState;
  readonly startsAt: Date | null;
  readonly endsAt: Date | null;
}

/** There already; on its way by the plan, to be looked at again by then; or late, with the reason. */
export type Outlook =
  | { readonly state: 'arrived' }
  | { readonly state: 'on-its-way'; readonly by: Date }
  | { readonly state: 'late'; readonly reason: string };

/**
 * Whether the work for a visit can be counted on. Work that the plan still brings in time is left alone: to ask about
 * each of it would drown the questions that matter.
 */
export function outlookOf({ visitAt, missing, obstacle, steps, runArrivesAt }: WorkForVisit, now: Date): Outlook {
  if (missing.length === 0) return { state: 'arrived' };
  if (obstacle !== null) return { state: 'late', reason: obstacle };
  for (const step of steps) {
    const behind = behindPlan(step, now);
    if (behind !== null) return { state: 'late', reason: behind };
  }
  const ends = steps.flatMap(({ endsAt }) => endsAt?.getTime() ?? []);
  const by = runArrivesAt ?? (ends.length === 0 ? null : new Date(Math.max(...ends)));
  if (by === null || by <= now) return { state: 'late', reason: 'The laboratory’s work should have arrived' };
  if (by > visitAt)
    return { state: 'late', reason: `The work is planned to arrive at ${by.toISOString()}, after the visit` };
  return { state: 'on-its-way', by };
}

function behindPlan({ title, state, startsAt, endsAt }: PlannedStep, now: Date): string | null {
  switch (state) {
    case 'finished':
      return null;
    case 'unplanned':
    case 'rejected':
    case 'discarded':
      return `"${title}" is ${state}`;
    case 'started':
    case 'paused':
      return endsAt !== null && endsAt > now ? null : `"${title}" should have been finished`;
    case 'planned':
    case 'ready':
      return startsAt !== null && startsAt > now ? null : `"${title}" should have begun`;
  }
}
