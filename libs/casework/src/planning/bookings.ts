import type { CasePlanVisit } from '@archwright/protocol';
import { Appointment, AppointmentStage, type Stage } from '@archwright/records';
import { In, Not, type EntityManager } from 'typeorm';

/** A stage with the visit that serves it. */
export interface StageBooking {
  readonly stage: Stage;
  readonly appointment: Appointment;
}

/** Visits of stages that take place, took place or are held; cancelled and missed ones are left out. */
export async function loadBookings(tx: EntityManager, stages: readonly Stage[]): Promise<StageBooking[]> {
  const links = await tx.findBy(AppointmentStage, { stageId: In(stages.map(({ id }) => id)) });
  const appointments = await tx.findBy(Appointment, {
    id: In(links.map(({ appointmentId }) => appointmentId)),
    state: Not(In(['cancelled', 'missed'])),
  });
  const byId = new Map(appointments.map((each) => [each.id, each]));
  return stages.flatMap((stage) =>
    links
      .filter(({ stageId }) => stageId === stage.id)
      .flatMap(({ appointmentId }) => {
        const appointment = byId.get(appointmentId);
        return appointment === undefined ? [] : [{ stage, appointment }];
      }),
  );
}

/** The clinician's way of a visit at home, each way: such a visit has no chair of the clinic. Null at the clinic. */
export const homeTravelOf = ({ chairId, travelBeforeMinutes }: Appointment): number | null =>
  chairId === null ? travelBeforeMinutes : null;

/** Booked, not begun, and not merely held. */
export const isFirm = ({ appointment }: StageBooking): boolean => appointment.state === 'booked';

/** The patient is in the house or has been. */
export const hasBegun = ({ appointment }: StageBooking): boolean =>
  appointment.state === 'arrived' || appointment.state === 'in-progress' || appointment.state === 'completed';

/** When and where a visit is that stays as it is booked. */
export type StayingVisit = Pick<CasePlanVisit, 'startMs' | 'endMs' | 'homeTravelMinutes'>;

/** Visits of a case that stay while others of it are placed; those that have begun or are over are among them. */
export function stayingBeside(
  bookings: readonly StageBooking[],
  placed: readonly Pick<CasePlanVisit, 'stage' | 'round'>[],
): StayingVisit[] {
  return bookings
    .filter(({ stage }) => !placed.some((visit) => visit.stage === stage.code && visit.round === stage.round))
    .map(({ appointment }) => ({
      startMs: appointment.startsAt.getTime(),
      endMs: appointment.endsAt.getTime(),
      homeTravelMinutes: homeTravelOf(appointment),
    }));
}
