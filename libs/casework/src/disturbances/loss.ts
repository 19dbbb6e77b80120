import { courierRuns, toLocal, type Interval, type LocalRule } from '@archwright/calendar';
import type { FixedStep, PracticeSnapshot } from '@archwright/protocol';
import type { Disturbance, LabStep } from '@archwright/records';
import { withTaken } from '../planning/snapshot-changes.js';

/** What a disturbance takes away, and from when to when. */
export type Loss = Interval &
  (
    | { readonly what: 'resource' | 'clinic' | 'work-centre' | 'laboratory' | 'courier' | 'visit'; readonly id: string }
    | LateStep
    /** As when late work has been taken out of the plan since. */
    | { readonly what: 'nothing'; readonly id: string }
  );

/** Work that is ready at the end and no sooner; its place stays taken until then. */
interface LateStep {
  readonly what: 'lab-step';
  readonly id: string;
  readonly caseId: string;
  readonly hasBegun: boolean;
  readonly step: FixedStep;
}

/** @param step the late work; null for everything else. Work that is not planned loses nothing by being late. */
export function lossOf(row: Disturbance, step: LabStep | null): Loss {
  const interval = { startMs: row.startsAt.getTime(), endMs: row.endsAt.getTime() };
  if (step !== null) return lateStepOf(step, interval.endMs);
  const named = [
    ['resource', row.resourceId],
    ['clinic', row.clinicId],
    ['work-centre', row.workCentreId],
    ['laboratory', row.laboratoryId],
    ['courier', row.courierId],
    ['visit', row.appointmentId],
  ] as const;
  for (const [what, id] of named) if (id !== null) return { ...interval, what, id };
  throw new Error(`Disturbance ${row.id} names nothing, which the database refuses.`);
}

function lateStepOf(
  { id, caseId, code, laboratoryId, placeId, startsAt, endsAt, startedAt }: LabStep,
  endMs: number,
): Loss {
  if (laboratoryId === null || startsAt === null || endsAt === null)
    return { what: 'nothing', id, startMs: endMs, endMs };
  const startMs = (startedAt ?? startsAt).getTime();
  return {
    what: 'lab-step',
    id,
    caseId,
    // Until then its place is its own anyway.
    startMs: Math.min(endsAt.getTime(), endMs),
    endMs,
    hasBegun: startedAt !== null,
    step: { code, startMs, endMs, laboratoryId, placeId },
  };
}

/** The practice as it will be, for everybody. */
export function practiceAfter(practice: PracticeSnapshot, loss: Loss): PracticeSnapshot {
  const { startMs, endMs } = loss;
  const interval = { startMs, endMs };
  switch (loss.what) {
    case 'resource':
      return withTaken(practice, new Map([[loss.id, [interval]]]));
    case 'lab-step':
      return loss.step.placeId === null ? practice : withTaken(practice, new Map([[loss.step.placeId, [interval]]]));
    case 'clinic':
      return { ...practice, clinics: practice.clinics.map((each) => closedIf(each.id === loss.id, each, interval)) };
    case 'work-centre':
    case 'laboratory':
      return {
        ...practice,
        laboratories: practice.laboratories.map((laboratory) => ({
          ...laboratory,
          workCentres: laboratory.workCentres.map((centre) =>
            closedIf(laboratory.id === loss.id || centre.id === loss.id, centre, interval),
          ),
        })),
      };
    case 'courier':
      return {
        ...practice,
        couriers: practice.couriers.map((courier) =>
          courier.id !== loss.id
            ? courier
            : {
                ...courier,
                toLab: withoutRuns(courier.toLab, interval),
                toClinic: withoutRuns(courier.toClinic, interval),
              },
        ),
      };
    case 'visit':
    case 'nothing':
      return practice;
  }
}

function closedIf<Place extends { readonly closures: PracticeSnapshot['clinics'][number]['closures'] }>(
  isLost: boolean,
  place: Place,
  interval: Interval,
): Place {
  return isLost ? { ...place, closures: [...place.closures, interval] } : place;
}

/** Departures of a timetable that do not take place, as its exceptions name them. */
export function lostRuns(rule: LocalRule, interval: Interval): string[] {
  return courierRuns(rule, interval).map(({ departsAtMs }) => toLocal(departsAtMs, rule.zone).slice(0, 16));
}

function withoutRuns(rule: LocalRule, interval: Interval): LocalRule {
  return { ...rule, exceptLocal: [...(rule.exceptLocal ?? []), ...lostRuns(rule, interval)] };
}
