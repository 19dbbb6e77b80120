import { localDate } from '@archwright/calendar';
import type { CasePlan } from '@archwright/protocol';
import { homeTravelOf, type StageBooking } from '../planning/bookings.js';
import { isMovable, type ReplanBasis } from '../planning/replan-basis.js';

/** What is left of a case's bookings when some are dropped: a plan in which nothing moves. */
export function keptOnly(basis: ReplanBasis, dropped: readonly StageBooking[], now: Date): CasePlan {
  const staying = basis.bookings.filter((booking) => isMovable(booking, now) && !dropped.includes(booking));
  const visits = staying.flatMap(({ stage, appointment }): CasePlan['visits'] => {
    const part = basis.loaded.chain.stages.find(({ code }) => code === stage.code);
    if (part === undefined) return [];
    return [
      {
        stage: stage.code,
        round: stage.round,
        title: part.title,
        arches: stage.arches,
        clinicId: appointment.clinicId,
        clinicianId: appointment.clinicianId,
        chairId: appointment.chairId ?? '',
        homeTravelMinutes: homeTravelOf(appointment),
        assistantId: appointment.assistantId,
        kits: [],
        startMs: appointment.startsAt.getTime(),
        endMs: appointment.endsAt.getTime(),
        isDelivery: part.isDelivery,
        isReview: part.isReview,
        isKept: true,
        asWished: true,
        againstWishes: [],
        bufferMinutes: null,
      },
    ];
  });
  const delivery = visits.find(({ isDelivery }) => isDelivery);
  const zone = basis.request.patient.zone;
  return {
    visits,
    labSteps: [],
    transports: [],
    deliveryOn: delivery === undefined ? null : localDate(delivery.startMs, zone),
    wishesBroken: 0,
    clinicianChanges: 0,
    clinicChanges: 0,
    reasons: [],
    givesUp: [],
  };
}
