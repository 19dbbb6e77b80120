import { dateOfDay, toLocal, weekday, type Interval } from '@archwright/calendar';
import type { ChainOffer, OfferReason, PlannedOperation, PlannedVisit } from '@archwright/planner';
import type { Arch } from '../path-schema.js';
import { timeTaken, wayMs } from './home-visits.js';
import { lossesOf, type PlanLoss } from './losses.js';
import type { PhaseToPlan, VisitToPlan } from './remaining.js';
import type { PlanNames } from './problem.js';
import { atOnce, type Direction, type Leg } from './transport.js';

/** One visit of a plan. */
export interface CasePlanVisit {
  readonly stage: string;
  readonly round: number;
  readonly title: string;
  readonly arches: readonly Arch[];
  readonly clinicId: string;
  readonly clinicianId: string;
  /** Empty for a visit at the patient's home. */
  readonly chairId: string;
  /** The clinician's way of a visit at home, each way, in minutes of the grid; null at the clinic. */
  readonly homeTravelMinutes: number | null;
  /** Null when none is needed, or when a kept booking brings its own. */
  readonly assistantId: string | null;
  readonly kits: readonly { readonly code: string; readonly kitId: string; readonly readyAtMs: number }[];
  readonly startMs: number;
  readonly endMs: number;
  readonly isDelivery: boolean;
  readonly isReview: boolean;
  readonly isKept: boolean;
  readonly asWished: boolean;
  /** Wishes it breaks. */
  readonly againstWishes: readonly ('weekday' | 'hours')[];
  /** Minutes between the return of the work it needs and when it is taken along or used; null when it needs none. */
  readonly bufferMinutes: number | null;
}

/** One lab step of a plan, on a named place. */
export interface CasePlanLabStep {
  readonly code: string;
  readonly round: number;
  readonly title: string;
  readonly arches: readonly Arch[];
  readonly afterStage: string;
  readonly beforeStage: string;
  readonly laboratoryId: string;
  readonly workCentreId: string;
  readonly workCentre: string;
  /** Null when the step holds no place. */
  readonly placeId: string | null;
  /** The open batch it joins; null when it runs by itself. */
  readonly batchId: string | null;
  readonly startMs: number;
  readonly endMs: number;
  /** When its place is held. */
  readonly holds: readonly Interval[];
  readonly isKept: boolean;
}

export interface CasePlanTransport {
  readonly phase: string;
  readonly direction: Direction;
  /** Null when the work is carried over under one roof or sent as a file. */
  readonly courierId: string | null;
  readonly clinicId: string;
  readonly laboratoryId: string;
  readonly departsAtMs: number;
  readonly arrivesAtMs: number;
}

/** A complete plan in the words of the trade. */
export interface CasePlan {
  readonly visits: readonly CasePlanVisit[];
  readonly labSteps: readonly CasePlanLabStep[];
  readonly transports: readonly CasePlanTransport[];
  /** Local date of placement; null when no denture is placed any more. */
  readonly deliveryOn: string | null;
  readonly wishesBroken: number;
  readonly clinicianChanges: number;
  readonly clinicChanges: number;
  /** What makes this plan good. */
  readonly reasons: readonly OfferReason[];
  readonly givesUp: readonly PlanLoss[];
}

/** Reads an offer of the planner back into visits, lab steps and courier runs. */
export function fromChainPlan(offer: ChainOffer, names: PlanNames): CasePlan {
  const labSteps = offer.operations.map((operation) => labStepOf(operation, names));
  const planned = names.remaining.visits.flatMap((each): { toPlan: VisitToPlan; visit: PlannedVisit }[] => {
    const visit = offer.visits.find((candidate) => candidate.visit === each.stage.code);
    return visit === undefined ? [] : [{ toPlan: each, visit }];
  });
  const transports = names.remaining.phases.flatMap((phase) => transportsOf(phase, offer, labSteps, names));
  const visits = planned.map(({ toPlan, visit }) => visitOf(toPlan, visit, transports, names));
  const { wishesBroken, clinicianChanges, clinicChanges, deliveryDay } = offer.vector;
  const deliveryOn = names.placesDenture ? dateOfDay(deliveryDay) : null;
  return {
    visits,
    labSteps,
    transports,
    deliveryOn,
    wishesBroken,
    clinicianChanges,
    clinicChanges,
    reasons: offer.reasons,
    givesUp: lossesOf(visits, offer.vector, names.request.patient),
  };
}

function visitOf(
  toPlan: VisitToPlan,
  visit: PlannedVisit,
  transports: readonly CasePlanTransport[],
  { axis, request, remaining }: PlanNames,
): CasePlanVisit {
  const { stage, row, kept, homeTravelMinutes } = toPlan;
  const way = wayMs(toPlan);
  const leavesAtMs = axis.msOf(visit.startSlot);
  const startMs = kept?.startMs ?? leavesAtMs + way;
  const endMs = kept?.endMs ?? axis.msOf(visit.endSlot) - way;
  const phases = remaining.phases
    .filter((each) => each.phase.beforeStage === stage.code)
    .map((each) => each.phase.code);
  const returns = transports.filter((each) => each.direction === 'to-clinic' && phases.includes(each.phase));
  const broken = wishesBrokenBy(startMs, endMs, request.patient);
  return {
    stage: stage.code,
    round: row.round,
    title: stage.title,
    arches: row.arches,
    clinicId: visit.clinic,
    clinicianId: visit.clinician,
    chairId: visit.chair,
    homeTravelMinutes: homeTravelMinutes === null ? null : way / 60_000,
    assistantId: visit.assistant,
    kits: visit.kits.map((kit) => ({ code: kit.kind, kitId: kit.unit, readyAtMs: axis.msOf(kit.readySlot) })),
    startMs,
    endMs,
    isDelivery: stage.isDelivery,
    isReview: stage.isReview,
    isKept: kept !== null,
    asWished: broken.length === 0,
    againstWishes: broken,
    bufferMinutes:
      returns.length === 0
        ? null
        : Math.floor((leavesAtMs - Math.max(...returns.map((each) => each.arrivesAtMs))) / 60_000),
  };
}

function wishesBrokenBy(
  startMs: number,
  endMs: number,
  { wishes, zone }: PlanNames['request']['patient'],
): CasePlanVisit['againstWishes'] {
  const start = toLocal(startMs, zone);
  const end = toLocal(endMs, zone);
  const day = weekday(start.slice(0, 10));
  const broken: ('weekday' | 'hours')[] = [];
  if (wishes.weekdays.length > 0 && !wishes.weekdays.includes(day)) broken.push('weekday');
  const runsOver = end.slice(0, 10) > start.slice(0, 10) && end.slice(11) > '00:00';
  const tooEarly = wishes.from !== null && start.slice(11) < wishes.from;
  const tooLate =
    wishes.to !== null && (runsOver || (end.slice(11) > wishes.to && end.slice(0, 10) === start.slice(0, 10)));
  if (tooEarly || tooLate) broken.push('hours');
  return broken;
}

function labStepOf(operation: PlannedOperation, { axis, remaining }: PlanNames): CasePlanLabStep {
  const found = remaining.phases.flatMap((each) => each.steps).find((each) => each.step.code === operation.operation);
  if (found === undefined)
    throw new Error(`the planner answered operation ${operation.operation}, which was not asked for`);
  const { step, row, kept } = found;
  return {
    code: step.code,
    round: row.round,
    title: step.title,
    arches: row.arches,
    afterStage: step.afterStage,
    beforeStage: step.beforeStage,
    laboratoryId: operation.lab,
    workCentreId: operation.centre,
    workCentre: step.workCentre,
    placeId: operation.place,
    batchId: operation.batch,
    startMs: axis.msOf(operation.startSlot),
    endMs: axis.msOf(operation.endSlot),
    holds: operation.holds.map((each) => ({ startMs: axis.msOf(each.startSlot), endMs: axis.msOf(each.endSlot) })),
    isKept: kept !== null,
  };
}

/** The runs that carry a phase's work: out at once after its visit, home at once after its last step. */
function transportsOf(
  { phase, steps, isWhole }: PhaseToPlan,
  offer: ChainOffer,
  labSteps: readonly CasePlanLabStep[],
  { axis, request, transport }: PlanNames,
): CasePlanTransport[] {
  const own = labSteps.filter((each) => steps.some(({ step }) => step.code === each.code));
  const laboratory = request.practice.laboratories.find((each) => each.id === own[0]?.laboratoryId);
  if (laboratory === undefined) return [];
  const described = (direction: Direction, clinicId: string, leg: Leg | null): CasePlanTransport[] =>
    leg === null ? [] : [{ phase: phase.code, direction, clinicId, laboratoryId: laboratory.id, ...leg }];
  const from = offer.visits.find((each) => each.visit === phase.afterStage);
  const past = request.fixedStages.find((each) => each.code === phase.afterStage);
  const leaves =
    from !== undefined
      ? { clinicId: from.clinic, atMs: axis.msOf(from.endSlot) }
      : past !== undefined && isWhole
        ? { clinicId: past.clinicId, atMs: timeTaken(past).endMs }
        : null;
  const out =
    leaves === null
      ? []
      : described(
          'to-lab',
          leaves.clinicId,
          phase.outward === 'file'
            ? atOnce(leaves.atMs)
            : transport.first('to-lab', leaves.clinicId, laboratory, leaves.atMs),
        );
  const to = offer.visits.find((each) => each.visit === phase.beforeStage);
  const readyMs = Math.max(...own.map((each) => each.endMs));
  const home =
    to === undefined
      ? []
      : described('to-clinic', to.clinic, transport.first('to-clinic', to.clinic, laboratory, readyMs));
  return [...out, ...home];
}
