import { isToCome } from '@archwright/protocol';
import { Occupancy } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { homeTravelOf, type StageBooking } from './bookings.js';
import { loadPlanningBasis, type PlanningBasis, type SharedPractice } from './planning-basis.js';
import type { BookedVisit, ReplanSearch } from './replan-search.js';

/** A case that is about to be planned anew around what is booked. */
export interface ReplanBasis extends PlanningBasis {
  readonly search: Omit<ReplanSearch, 'chosen'>;
}

/** Booked and to come: what a change may move. */
export const isMovable = ({ appointment }: StageBooking, now: Date): boolean =>
  (appointment.state === 'booked' || appointment.state === 'provisional') && appointment.startsAt > now;

/** When several cases are planned anew at once. */
export interface Among {
  readonly shared: SharedPractice;
  /** Bookings to come that are not to move all the same, such as those of tomorrow. */
  readonly stays: (booking: StageBooking) => boolean;
}

/**
 * The case with every booking to come free to move, but for those that `among` keeps. Stages after the last booked one
 * stay unplanned, except `wanted`, and so do checks that nobody booked.
 *
 * @param wanted stage that has to be planned although it has no booking, such as one whose visit was missed
 */
export async function loadReplanBasis(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  wanted: string | null,
  now: Date,
  among: Among | null = null,
): Promise<ReplanBasis> {
  const nothing = () => false;
  const stays = (booking: StageBooking) => isMovable(booking, now) && among?.stays(booking) === true;
  const options = { keeps: stays, keepsStep: () => nothing, everyClinic: false, shared: among?.shared };
  const basis = await loadPlanningBasis(tx, actor, caseId, options, now);
  const { chain } = basis.loaded;
  const toCome = basis.bookings.filter((booking) => isMovable(booking, now));
  const movable = toCome.filter((booking) => !stays(booking));
  const inPlan = new Set([...(wanted === null ? [] : [wanted]), ...toCome.map(({ stage }) => stage.code)]);
  const lastPosition = Math.max(...chain.stages.filter(({ code }) => inPlan.has(code)).map(({ position }) => position));
  const isLeftOut = ({ code, position, isReview }: (typeof chain.stages)[number]) =>
    position > lastPosition || (isReview && !inPlan.has(code));
  const beyond = new Set(chain.stages.filter(isLeftOut).map(({ code }) => code));
  const progress = {
    ...basis.request.progress,
    stages: basis.request.progress.stages.map((row) =>
      beyond.has(row.code) && isToCome(row.state) ? { ...row, state: 'dropped' as const } : row,
    ),
  };
  return {
    ...basis,
    search: {
      request: { ...basis.request, progress },
      booked: await bookedVisits(tx, movable),
      plannedSteps: plannedSteps(basis, now),
    },
  };
}

async function bookedVisits(tx: EntityManager, movable: readonly StageBooking[]): Promise<BookedVisit[]> {
  const taken = await tx.findBy(Occupancy, { appointmentId: In(movable.map(({ appointment }) => appointment.id)) });
  return movable.map(({ stage, appointment }) => ({
    stage: stage.code,
    startMs: appointment.startsAt.getTime(),
    endMs: appointment.endsAt.getTime(),
    clinicId: appointment.clinicId,
    clinicianId: appointment.clinicianId,
    chairId: appointment.chairId ?? '',
    homeTravelMinutes: homeTravelOf(appointment),
    assistantId: appointment.assistantId,
    kitIds: taken.filter(({ appointmentId }) => appointmentId === appointment.id).map(({ resourceId }) => resourceId),
  }));
}

function plannedSteps({ loaded }: PlanningBasis, now: Date): ReplanSearch['plannedSteps'] {
  return loaded.rows.steps.flatMap(
    ({ code, state, startsAt, endsAt, laboratoryId, placeId, afterStage, beforeStage }) => {
      const isPlanned = state === 'planned' || state === 'ready';
      if (!isPlanned || startsAt === null || endsAt === null || laboratoryId === null || startsAt < now) return [];
      const [startMs, endMs] = [startsAt.getTime(), endsAt.getTime()];
      return [{ code, startMs, endMs, laboratoryId, placeId, afterStage, beforeStage }];
    },
  );
}
