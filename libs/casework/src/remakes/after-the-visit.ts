import { addDays, localDate, startOfDayMs } from '@archwright/calendar';
import type { ReplanBasis } from '../planning/replan-basis.js';
import { hasBegun } from '../planning/bookings.js';

/**
 * A visit that is under way is over for the plan, even when it began before its booked time; the patient is not asked to
 * come a second time on the same day (project default).
 */
export function afterTheVisit(basis: ReplanBasis): ReplanBasis {
  const { request } = basis.search;
  const { nowMs, patient } = request;
  const begun = basis.bookings.filter(hasBegun);
  const isBegun = (code: string, startMs: number) =>
    begun.some(({ stage, appointment }) => stage.code === code && appointment.startsAt.getTime() === startMs);
  const today = begun.filter(
    ({ appointment }) => localDate(appointment.startsAt.getTime(), patient.zone) === dayOf(basis),
  );
  const nextDayMs = startOfDayMs(addDays(dayOf(basis), 1), patient.zone);
  const notBeforeMs = today.length === 0 ? request.notBeforeMs : Math.max(request.notBeforeMs ?? 0, nextDayMs);
  const fixedStages = request.fixedStages.map((fixed) =>
    isBegun(fixed.code, fixed.startMs) ? { ...fixed, startMs: Math.min(fixed.startMs, nowMs - 1) } : fixed,
  );
  return { ...basis, search: { ...basis.search, request: { ...request, fixedStages, notBeforeMs } } };
}

const dayOf = ({ search }: ReplanBasis): string => localDate(search.request.nowMs, search.request.patient.zone);
