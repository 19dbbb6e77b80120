import type { ChainVector } from '@archwright/planner';
import type { PatientSnapshot } from '../snapshot.js';
import type { CasePlanVisit } from './plan.js';

/** What a plan gives up against the wishes, or against the earliest of several plans. */
export type PlanLoss =
  /** Its visits start at these instants, in milliseconds; `zone` is the patient's. */
  | { readonly kind: 'outside-wishes'; readonly startsMs: readonly number[]; readonly zone: string }
  | { readonly kind: 'clinician-changes' | 'clinic-changes'; readonly count: number }
  /** A visit takes longer than the patient can sit on a day. */
  | { readonly kind: 'too-long'; readonly title: string; readonly minutes: number; readonly mostMinutes: number }
  | { readonly kind: 'later-delivery'; readonly days: number };

export function lossesOf(
  visits: readonly CasePlanVisit[],
  { clinicianChanges, clinicChanges }: ChainVector,
  { zone, chairMinutesPerDay }: PatientSnapshot,
): PlanLoss[] {
  const startsMs = visits.filter((each) => !each.asWished).map(({ startMs }) => startMs);
  return [
    ...(startsMs.length > 0 ? [{ kind: 'outside-wishes' as const, startsMs, zone }] : []),
    ...(clinicianChanges > 0 ? [{ kind: 'clinician-changes' as const, count: clinicianChanges }] : []),
    ...(clinicChanges > 0 ? [{ kind: 'clinic-changes' as const, count: clinicChanges }] : []),
    ...visits.flatMap(({ title, startMs, endMs }) => {
      const minutes = (endMs - startMs) / 60_000;
      if (chairMinutesPerDay === null || minutes <= chairMinutesPerDay) return [];
      return [{ kind: 'too-long' as const, title, minutes, mostMinutes: chairMinutesPerDay }];
    }),
  ];
}
