import { dateOfDay } from '@archwright/calendar';
import { and, erode, type ChainResource, type ChainVisit, type SlotBits, type VisitOption } from '@archwright/planner';
import type { ClinicSnapshot, KitSnapshot } from '../snapshot.js';
import { SLOT_MINUTES, type PlanningAxis } from './axis.js';
import { leavingFor, timeTaken, waySlots } from './home-visits.js';
import { PersonDays } from './placement-rule.js';
import type { VisitToPlan } from './remaining.js';
import type { PlanRequest } from './request.js';

/** Slots in the order of the patient's day: what is wished, what is possible, what the patient said is impossible. */
interface PatientTime {
  readonly wished: SlotBits | null;
  readonly possible: SlotBits;
  readonly possibleIfLifted: SlotBits;
}

const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'] as const;
const DAY_MINUTES = 1440;

/** The patient's time for visits at the clinic and for those at home. */
export interface PatientTimes {
  readonly atClinic: PatientTime;
  readonly atHome: PatientTime;
}

export function patientTimes(axis: PlanningAxis, request: PlanRequest): PatientTimes {
  const { travelMinutes, escort } = request.patient;
  return {
    atClinic: patientTime(axis, request, { travelMinutes, escort }),
    // Nobody is brought and nobody travels but the clinician.
    atHome: patientTime(axis, request, { travelMinutes: 0, escort: [] }),
  };
}

/** Turns what the patient can and would like into slots. */
function patientTime(
  axis: PlanningAxis,
  { patient, ignoreUnavailable }: PlanRequest,
  { travelMinutes, escort }: Pick<PlanRequest['patient'], 'travelMinutes' | 'escort'>,
): PatientTime {
  const escorted = escort.length === 0 ? axis.full() : axis.open(escort, []);
  const travelMs = travelMinutes * 60_000;
  const busy = patient.busy.map((each) => ({ startMs: each.startMs - travelMs, endMs: each.endMs + travelMs }));
  const notElsewhere = axis.notBusy(busy);
  const away = patient.unavailableOn.map((date) => ({ zone: patient.zone, firstOn: date, lastOn: date }));
  const present = axis.open([everyDay(patient.zone, axis)], away);
  const lifted = notElsewhere;
  const possible = and(and(lifted, escorted), present);
  return {
    wished: wishedTime(axis, patient),
    possible: ignoreUnavailable ? lifted : possible,
    possibleIfLifted: lifted,
  };
}

function everyDay(zone: string, axis: PlanningAxis) {
  return { zone, startsLocal: `${dateBefore(axis)}T00:00`, minutes: DAY_MINUTES, rrule: 'FREQ=DAILY' };
}

/** A date safely before the axis in every zone. */
const dateBefore = (axis: PlanningAxis): string => dateOfDay(Math.floor(axis.originMs / 86_400_000) - 2);

function wishedTime(axis: PlanningAxis, { wishes, zone }: PlanRequest['patient']): SlotBits | null {
  const { weekdays, from, to } = wishes;
  if (weekdays.length === 0 && from === null && to === null) return null;
  const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
  const startMinutes = from === null ? 0 : minutesOf(from);
  const endMinutes = to === null ? DAY_MINUTES : minutesOf(to);
  // Hours that end before they begin are nobody's wish: nothing is as wished then, and every offer says so.
  if (endMinutes <= startMinutes) return axis.range(0, -1);
  const byDay = weekdays.length === 0 ? '' : `;BYDAY=${weekdays.map((day) => WEEKDAYS[day - 1]).join(',')}`;
  const rrule = weekdays.length === 0 ? 'FREQ=DAILY' : `FREQ=WEEKLY${byDay}`;
  const startsLocal = `${dateBefore(axis)}T${from ?? '00:00'}`;
  return axis.open([{ zone, startsLocal, minutes: endMinutes - startMinutes, rrule }], []);
}

/** A clinician's slots at one clinic, and what the placement rule makes of them. */
class ClinicianTime implements ChainResource {
  readonly key: string;
  readonly skills: readonly string[];
  readonly free: SlotBits;
  private readonly working: SlotBits;
  private days: PersonDays | null = null;
  private readonly costs = new Map<number, Uint8Array>();

  constructor(
    private readonly axis: PlanningAxis,
    { id, skills, working, absences, busy }: ClinicSnapshot['clinicians'][number],
    private readonly zone: string,
  ) {
    this.key = id;
    this.skills = skills;
    this.working = axis.open(working, absences);
    this.free = and(this.working, axis.notBusy(busy));
  }

  /** By start; made once for each length, so that the planner knows it again. */
  placementCosts(lengthSlots: number): Uint8Array {
    let costs = this.costs.get(lengthSlots);
    if (costs === undefined) {
      this.days ??= new PersonDays(this.working, this.free, this.axis.daysIn(this.zone));
      costs = this.days.placementCosts(lengthSlots);
      this.costs.set(lengthSlots, costs);
    }
    return costs;
  }
}

/** Slots for one clinic's resources, made once and shared by every visit. */
export class ClinicResources {
  readonly open: SlotBits;
  readonly clinicians: readonly ClinicianTime[];
  readonly chairs: readonly (ChainResource & { readonly wheelchairRoom: boolean })[];
  readonly assistants: readonly ChainResource[];
  readonly kits: readonly (ChainResource & { readonly kit: KitSnapshot })[];
  /** Stands for the chair of a visit at home: none is taken, and the clinic's protected minutes keep their clinician. */
  readonly noChair: ChainResource;

  constructor(
    axis: PlanningAxis,
    readonly clinic: ClinicSnapshot,
  ) {
    this.open = axis.open(clinic.opening, clinic.closures);
    const usable = and(this.open, axis.notBusy(clinic.protected));
    this.clinicians = clinic.clinicians.map((each) => new ClinicianTime(axis, each, clinic.zone));
    this.assistants = clinic.assistants.map(({ id, working, absences, busy }) => ({
      key: id,
      free: and(axis.open(working, absences), axis.notBusy(busy)),
    }));
    this.chairs = clinic.chairs.map((each) => ({
      key: each.id,
      wheelchairRoom: each.wheelchairRoom,
      free: and(usable, axis.notBusy(each.busy)),
    }));
    this.noChair = { key: '', free: usable };
    this.kits = clinic.kits.map((kit) => ({ key: kit.id, kit, free: axis.notBusy(kit.busy) }));
  }
}

/**
 * The planner's visit for one stage; one at home with the way there and back. `bounds` are first and last start that what
 * has already happened leaves, and the days on which the patient can sit for so long; null for every day.
 */
export function toChainVisit(
  axis: PlanningAxis,
  request: PlanRequest,
  clinics: readonly ClinicResources[],
  times: PatientTimes,
  visit: VisitToPlan,
  follows: number | null,
  bounds: { readonly first: number; readonly last: number; readonly room: SlotBits | null },
): ChainVisit {
  const way = waySlots(visit);
  const time = visit.homeTravelMinutes === null ? times.atClinic : times.atHome;
  const chairSlots = Math.ceil(visit.stage.chairMinutes.typical / SLOT_MINUTES);
  const lengthSlots = chairSlots + 2 * way;
  const startsIn = (bits: SlotBits) => leavingFor(erode(bits, chairSlots), way);
  const range = axis.range(bounds.first, bounds.last);
  const inTime = bounds.room === null ? range : and(range, bounds.room);
  const allowed = and(startsIn(time.possible), inTime);
  const lifted = and(startsIn(time.possibleIfLifted), inTime);
  const wished = time.wished === null ? null : startsIn(time.wished);
  const { kept } = visit;
  const options =
    kept === null
      ? clinics.map((each) => freeOption(request, each, visit, lengthSlots, allowed, lifted))
      : clinics.filter((each) => each.clinic.id === kept.clinicId).map((each) => keptOption(axis, each, kept));
  return { key: visit.stage.code, follows, options, wished };
}

function freeOption(
  { wishes, patient }: PlanRequest,
  resources: ClinicResources,
  { stage, homeTravelMinutes }: VisitToPlan,
  lengthSlots: number,
  allowed: SlotBits,
  allowedIfLifted: SlotBits,
): VisitOption {
  const able = resources.clinicians.filter((each) => stage.skills.every((skill) => each.skills.includes(skill)));
  const own = able.some((each) => each.key === wishes.clinicianId) ? wishes.clinicianId : null;
  return {
    clinic: resources.clinic.id,
    refused: !wishes.clinicIds.includes(resources.clinic.id),
    lengthSlots,
    open: resources.open,
    clinicians: able.map((each) => ({
      key: each.key,
      free: each.free,
      placementCost: each.placementCosts(lengthSlots),
      refused: own !== null && each.key !== own,
    })),
    chairs:
      homeTravelMinutes === null
        ? resources.chairs.filter((each) => each.wheelchairRoom || !patient.wheelchairRoom)
        : [resources.noChair],
    assistants: stage.assistant ? resources.assistants : null,
    kits: stage.kits.map((kind) => {
      const units = resources.kits.filter((each) => each.kit.code === kind);
      const minutes = Math.max(0, ...units.map((each) => each.kit.reprocessingMinutes));
      return { kind, reprocessingSlots: Math.ceil(minutes / SLOT_MINUTES), units };
    }),
    allowed,
    allowedIfLifted,
  };
}

/** A booking that stays: its one start, on its own resources, which the snapshot left out of the busy time. */
function keptOption(
  axis: PlanningAxis,
  resources: ClinicResources,
  kept: NonNullable<VisitToPlan['kept']>,
): VisitOption {
  const { startMs, endMs } = timeTaken(kept);
  // Who is on the way to the patient already left before the axis begins.
  const slot = Math.max(0, axis.slotUntil(startMs));
  const free = axis.full();
  return {
    clinic: resources.clinic.id,
    refused: false,
    lengthSlots: axis.slotFrom(endMs) - slot,
    open: free,
    clinicians: [{ key: kept.clinicianId, free, placementCost: null, refused: false }],
    chairs: [{ key: kept.chairId, free }],
    assistants: null,
    kits: [],
    allowed: axis.range(slot, slot),
    allowedIfLifted: null,
  };
}
