import type { ChainLag, ChainProblem } from '@archwright/planner';
import { dayOfSlot } from '@archwright/calendar';
import { NothingToPlanError } from '../errors.js';
import { PlanningAxis } from './axis.js';
import { DailyCap } from './daily-cap.js';
import { betweenBlocks, wayMs, waySlots } from './home-visits.js';
import { overridden, toProblemPhase, type PhaseContext } from './lab-phase.js';
import { PLACEMENT } from './placement-rule.js';
import { remainingOf, type Remaining } from './remaining.js';
import type { PlanRequest } from './request.js';
import { boundsAfter, tablesOf, type DayCounting } from './spans.js';
import { Transport } from './transport.js';
import { ClinicResources, patientTimes, toChainVisit } from './visit-options.js';

/** What reading a plan back needs: the request and what its keys stand for. */
export interface PlanNames {
  readonly request: PlanRequest;
  readonly axis: PlanningAxis;
  readonly transport: Transport;
  readonly remaining: Remaining;
  /** Zone in which days are counted. */
  readonly zone: string;
  /** False when no denture is placed any more: the days of the front are then those of the first visit. */
  readonly placesDenture: boolean;
}

/** Chains over more clinics than these stay in one clinic: the search would grow with every pair. */
const MOST_MIXED_CLINICS = 3;

/**
 * Translates what is left of a case into the planner's problem.
 *
 * @param axis time that starts where the request says; handed in again by those who ask many questions about one instant
 *
 * Kept bookings take part with their one start. What has happened already bounds what follows. Offers reach through the first
 * checks after placement; later reviews and recalls are not part of the problem.
 *
 * @throws {NothingToPlanError} when no visit is left
 * @throws {NoLaboratoryError} when no accepted laboratory can make some work
 */
export function toChainProblem(
  request: PlanRequest,
  axis = new PlanningAxis(request.nowMs, request.horizonWeeks),
): { readonly problem: ChainProblem; readonly names: PlanNames } {
  const transport = new Transport(request.practice, axis);
  const remaining = remainingOf(request);
  const { visits } = remaining;
  if (visits.length === 0) throw new NothingToPlanError();
  const zone = zoneOf(request);
  const visitIndex = new Map(visits.map((each, index) => [each.stage.code, index]));
  const lastDelivery = visits.findLastIndex((each) => each.stage.isDelivery);
  const deliveryVisit = Math.max(0, lastDelivery);
  const clinics = request.practice.clinics.map((clinic) =>
    axis.onceOf(clinic, 'resources', () => new ClinicResources(axis, clinic)),
  );
  const times = patientTimes(axis, request);
  const wayOf = (visit: number) => waySlots(visits[visit] ?? { homeTravelMinutes: null });
  const context = { axis, request, transport, visitIndex, wayOf, zone };
  const bounds = startBounds(axis, request, remaining, transport, zone);
  const cap = DailyCap.of(axis, request, zone);
  const problem: ChainProblem = {
    slotCount: axis.count,
    dayOfSlot: axis.daysIn(zone),
    halfDayOfSlot: axis.once(`half days ${zone}`, () => halfDays(axis, zone)),
    visits: visits.map((each, index) =>
      toChainVisit(axis, request, clinics, times, each, followed(request, remaining, index, deliveryVisit), {
        ...(bounds[index] ?? WHOLE),
        room: cap?.roomFor(each.stage.chairMinutes.typical) ?? null,
      }),
    ),
    deliveryVisit,
    lags: [...waits(context), ...(cap?.lags(visits) ?? [])],
    phases: remaining.phases.map((each) => toProblemPhase(context, each)),
    mixing: request.wishes.clinicIds.length > MOST_MIXED_CLINICS ? 'one-clinic' : 'any-clinic',
    seenBy: lastSeenBy(request),
    placement: PLACEMENT,
  };
  return { problem, names: { request, axis, transport, remaining, zone, placesDenture: lastDelivery >= 0 } };
}

const WHOLE = { first: 0, last: Number.MAX_SAFE_INTEGER };

/** The zone of the first accepted clinic: a case's clinics lie within one day's reach of the patient. */
function zoneOf({ practice, wishes, patient }: PlanRequest): string {
  return practice.clinics.find((each) => wishes.clinicIds.includes(each.id))?.zone ?? patient.zone;
}

function lastSeenBy({ fixedStages, nowMs }: PlanRequest): ChainProblem['seenBy'] {
  const past = fixedStages.filter((each) => each.startMs < nowMs).sort((a, b) => b.startMs - a.startMs)[0];
  return past === undefined ? null : { clinic: past.clinicId, clinician: past.clinicianId };
}

/** Up to delivery each visit follows the one before; a later one what its wait counts from, delivery when that is past. */
function followed({ chain }: PlanRequest, { visits }: Remaining, index: number, delivery: number): number | null {
  if (index === 0) return null;
  if (index <= delivery) return index - 1;
  const code = visits[index]?.stage.code;
  const from = chain.lags
    .filter((lag) => lag.to === code)
    .map((lag) => visits.findIndex((each) => each.stage.code === lag.from))
    .filter((each) => each >= delivery && each < index);
  return Math.max(delivery, ...from);
}

/**
 * First and last start of each visit as left by what has happened: the patient's notice, fixed visits and finished work,
 * which goes along to a visit at home.
 */
function startBounds(
  axis: PlanningAxis,
  request: PlanRequest,
  { visits, phases }: Remaining,
  transport: Transport,
  zone: string,
): { first: number; last: number }[] {
  const { chain, fixedStages, fixedSteps, practice } = request;
  const counting: DayCounting = { zone, labDays: practice.laboratories[0]?.labDays ?? null };
  const toCome = new Set([
    ...visits.map((each) => each.stage.code),
    ...phases.flatMap((phase) => phase.steps.map((each) => each.step.code)),
  ]);
  return visits.map((visit) => {
    const { stage, kept } = visit;
    const way = wayMs(visit);
    const bound = { first: 0, last: axis.count - 1 };
    const narrow = (fromMs: number, untilMs: number | null) => {
      bound.first = Math.max(bound.first, axis.slotFrom(fromMs));
      if (untilMs !== null) bound.last = Math.min(bound.last, axis.slotUntil(untilMs));
    };
    if (request.notBeforeMs !== null && kept === null) narrow(request.notBeforeMs - way, null);
    for (const lag of chain.lags) {
      if (lag.to !== stage.code || toCome.has(lag.from)) continue;
      const past = [...fixedStages, ...fixedSteps].find((each) => each.code === lag.from);
      if (past === undefined) continue;
      const { fromMs, untilMs } = boundsAfter(overridden(request, lag.code, lag), past.endMs, counting);
      narrow(fromMs - way, untilMs === null ? null : untilMs - way);
    }
    for (const step of chain.steps) {
      if (step.beforeStage !== stage.code || toCome.has(step.code)) continue;
      const done = fixedSteps.find((each) => each.code === step.code);
      const laboratory = practice.laboratories.find((each) => each.id === done?.laboratoryId);
      if (done === undefined || laboratory === undefined) continue;
      const arrivals = request.wishes.clinicIds.flatMap((clinic) => {
        const leg = transport.first('to-clinic', clinic, laboratory, done.endMs);
        return leg === null ? [] : [leg.arrivesAtMs];
      });
      narrow(arrivals.length === 0 ? done.endMs : Math.min(...arrivals), null);
    }
    return bound;
  });
}

/** Waits between two visits that are both to come. */
function waits({ axis, request, visitIndex, wayOf, zone }: PhaseContext): ChainLag[] {
  const counting: DayCounting = { zone, labDays: request.practice.laboratories[0]?.labDays ?? null };
  return request.chain.lags.flatMap((lag): ChainLag[] => {
    const from = visitIndex.get(lag.from);
    const to = visitIndex.get(lag.to);
    const limits = overridden(request, lag.code, lag);
    if (from === undefined || to === undefined || (limits.min === null && limits.max === null)) return [];
    const tables = betweenBlocks(axis, tablesOf(axis, limits, counting), { after: wayOf(from), before: wayOf(to) });
    return [{ key: lag.code, from, to, anchor: 'end', ...tables, byClinic: null }];
  });
}

/** Two numbers a day, before and after noon. */
function halfDays(axis: PlanningAxis, zone: string): Int32Array {
  const days = axis.daysIn(zone);
  // The day of the instant twelve hours later has changed by noon, give or take an hour on the day of a clock change.
  const shifted = dayOfSlot(
    { originMs: axis.originMs + 12 * 3_600_000, slotMinutes: axis.slotMinutes, count: axis.count },
    zone,
  );
  return days.map((day, slot) => day + (shifted[slot] ?? day));
}
