import { loadCaseTimes, loadSnapshot } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { withTaken, type ResourceTimes } from './snapshot-changes.js';
import type { Actor } from '../actor.js';
import type { StageBooking } from './bookings.js';
import type { SharedPractice } from './planning-basis.js';
import { loadReplanBasis, type ReplanBasis } from './replan-basis.js';

const WEEK_MS = 7 * 86_400_000;

/** A practice in which only what stays is taken, and who holds what of the rest. */
export interface JointPractice extends SharedPractice {
  /** Time that planning one case anew gives back, by case. */
  readonly held: ReadonlyMap<string, ResourceTimes>;
  /** Visits to come that stay all the same. */
  readonly stayingAppointmentIds: ReadonlySet<string>;
}

export interface JointScope {
  readonly clinicIds: readonly string[];
  readonly horizonWeeks: number;
  /** A visit that starts earlier stays. */
  readonly movableFrom: Date;
  /** Visits that move whenever they start. */
  readonly movingAppointmentIds?: readonly string[];
  /** Which visits may move at all; left out: those that are booked. */
  readonly movable?: 'booked' | 'provisional';
}

/**
 * Read once for all cases: the queries don't grow with their number. A case's own problem is this practice less what the
 * other cases hold.
 */
export async function loadJointPractice(
  tx: EntityManager,
  { clinicIds, horizonWeeks, movableFrom, movingAppointmentIds = [], movable: which = 'booked' }: JointScope,
  now: Date,
): Promise<JointPractice> {
  const fromMs = now.getTime();
  const window = { fromMs, untilMs: fromMs + (horizonWeeks + 1) * WEEK_MS };
  const scope = { ...window, movableFromMs: movableFrom.getTime(), movingAppointmentIds, movable: which };
  const { movable, staying, stayingAppointmentIds, caseIds } = await loadCaseTimes(tx, scope, now);
  const withoutCases = await loadSnapshot(tx, { ...window, clinicIds, withoutCaseIds: caseIds }, now);
  return { practice: withTaken(withoutCases, staying), horizonWeeks, held: movable, stayingAppointmentIds };
}

/** A case as it would be planned anew in this practice. `wanted` is a stage to plan although it has no booking. */
export function loadJointCase(
  tx: EntityManager,
  actor: Actor,
  { caseId, wanted }: { readonly caseId: string; readonly wanted: string | null },
  joint: JointPractice,
  now: Date,
): Promise<ReplanBasis> {
  const stays = ({ appointment }: StageBooking) => joint.stayingAppointmentIds.has(appointment.id);
  return loadReplanBasis(tx, actor, caseId, wanted, now, { shared: joint, stays });
}
