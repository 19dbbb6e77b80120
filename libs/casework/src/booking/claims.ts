import { normalise, subtract, type Interval } from '@archwright/calendar';
import { timeTaken, wayMs, type CasePlanLabStep, type CasePlanVisit } from '@archwright/protocol';
import type { ClaimRequest } from '@archwright/records';
import type { StayingVisit } from '../planning/bookings.js';

const GRID_MINUTES = 5;

type Hold = NonNullable<ClaimRequest['hold']>;

/** A visit of a plan with the appointment that it becomes. */
export interface VisitToClaim {
  readonly visit: CasePlanVisit;
  readonly appointmentId: string;
  /** Null: booked. */
  readonly hold: Hold | null;
}

export interface StepToClaim {
  readonly step: CasePlanLabStep;
  readonly labStepId: string;
  readonly hold: Hold | null;
}

export interface TravellingPatient {
  readonly id: string;
  readonly travelMinutes: number;
}

/** Travel is kept in whole slots of the booking grid. */
export const travelMinutesOf = ({ travelMinutes }: TravellingPatient): number =>
  Math.ceil(travelMinutes / GRID_MINUTES) * GRID_MINUTES;

/**
 * Everything that visits take: chair, people and kits with their reprocessing, and the patient's time with the way there
 * and back. Where the case's own visits lie close together the patient travels once: that time is taken by one of them.
 * To a visit at home the people and the kits travel, and no chair is taken.
 *
 * @param kept visits of the case that stay as they are booked
 */
export function visitClaims(
  visits: readonly VisitToClaim[],
  kept: readonly StayingVisit[],
  patient: TravellingPatient,
): ClaimRequest[] {
  const travelMsOf = ({ homeTravelMinutes }: StayingVisit) =>
    homeTravelMinutes === null ? travelMinutesOf(patient) * 60_000 : 0;
  const withTravel = kept.flatMap((visit) => [visit, ...waysOf(visit, travelMsOf(visit))]);
  let taken: Interval[] = normalise([...withTravel, ...visits.map(({ visit }) => visit)]);
  return visits.flatMap(({ visit, appointmentId, hold }) => {
    const around = subtract(waysOf(visit, travelMsOf(visit)), taken);
    taken = normalise([...taken, ...around]);
    const claimed = (resourceId: string, startMs: number, endMs: number, purpose: 'visit' | 'travel' = 'visit') =>
      toClaim({ resourceId, startMs, endMs, purpose, hold, owner: { appointmentId } });
    return [
      ...peopleAndChair(visit).map((id) => claimed(id, visit.startMs, visit.endMs)),
      ...waysOf(visit, wayMs(visit)).flatMap(({ startMs, endMs }) =>
        peopleOf(visit).map((id) => claimed(id, startMs, endMs, 'travel')),
      ),
      ...visit.kits.map(({ kitId, readyAtMs }) => claimed(kitId, timeTaken(visit).startMs, readyAtMs)),
      claimed(patient.id, visit.startMs, visit.endMs),
      ...around.map(({ startMs, endMs }) => claimed(patient.id, startMs, endMs, 'travel')),
    ];
  });
}

/** Bench places, for as long as the step keeps one; a step that joins a run takes none itself. */
export function stepClaims(steps: readonly StepToClaim[]): ClaimRequest[] {
  return steps.flatMap(({ step, labStepId, hold }) => {
    const { placeId } = step;
    if (placeId === null || step.batchId !== null) return [];
    return step.holds.map(({ startMs, endMs }) =>
      toClaim({ resourceId: placeId, startMs, endMs, purpose: 'lab', hold, owner: { labStepId } }),
    );
  });
}

function peopleAndChair(visit: CasePlanVisit): string[] {
  return visit.chairId === '' ? peopleOf(visit) : [visit.chairId, ...peopleOf(visit)];
}

const peopleOf = ({ clinicianId, assistantId }: CasePlanVisit): string[] =>
  assistantId === null ? [clinicianId] : [clinicianId, assistantId];

/** The way there and the way back, when there is one. */
function waysOf({ startMs, endMs }: Interval, lengthMs: number): Interval[] {
  if (lengthMs === 0) return [];
  return [
    { startMs: startMs - lengthMs, endMs: startMs },
    { startMs: endMs, endMs: endMs + lengthMs },
  ];
}

interface Claimed {
  readonly resourceId: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly purpose: ClaimRequest['purpose'];
  readonly hold: Hold | null;
  readonly owner: Pick<ClaimRequest, 'appointmentId' | 'labStepId'>;
}

function toClaim({ resourceId, startMs, endMs, purpose, hold, owner }: Claimed): ClaimRequest {
  const times = { resourceId, startsAt: new Date(startMs), endsAt: new Date(endMs), purpose };
  return hold === null ? { ...times, ...owner } : { ...times, ...owner, hold };
}
