import { dateOfDay } from '@archwright/calendar';
import { and, erode, type ChainResource, type ChainVisit, type SlotBits, type VisitOption } from '@archwright/planner';
import type { ClinicSnapshot, KitSnapshot } from '../snapshot.js';
import { SLOT_MINUTES, type PlanningAxis } from './axis.js';
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

/** Turns what the patient can and would like into slots. */
export function patientTime(axis: PlanningAxis, { patient, ignoreUnavailable }: PlanRequest): PatientTime {
  const escorted = patient.escort.length === 0 ? axis.full() : axis.open(patient.escort, []);
  const travelMs = patient.travelMinutes * 60_000;
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

/** Slots for one clinic's resources, made once and shared by every visit. */
export class ClinicResources {
  readonly open: SlotBits;
  readonly clinicians: readonly (ChainResource & { readonly skills: readonly string[] })[];
  readonly chairs: readonly (ChainResource & { readonly wheelchairRoom: boolean })[];
  readonly assistants: readonly ChainResource[];
  readonly kits: readonly (ChainResource & { readonly kit: KitSnapshot })[];

  constructor(
    axis: PlanningAxis,
    readonly clinic: ClinicSnapshot,
  ) {
    this.open = axis.open(clinic.opening, clinic.closures);
    const usable = and(this.open, axis.notBusy(clinic.protected));
    const worked = ({
      working,
      absences,
      busy,
    }: Pick<ClinicSnapshot['clinicians'][number], 'working' | 'absences' | 'busy'>) =>
      and(axis.open(working, absences), axis.notBusy(busy));
    this.clinicians = clinic.clinicians.map((each) => ({ key: each.id, skills: each.skills, free: worked(each) }));
    this.assistants = clinic.assistants.map((each) => ({ key: each.id, free: worked(each) }));
    this.chairs = clinic.chairs.map((each) => ({
      key: each.id,
      wheelchairRoom: each.wheelchairRoom,
      free: and(usable, axis.notBusy(each.busy)),
    }));
    this.kits = clinic.kits.map((kit) => ({ key: kit.id, kit, free: axis.notBusy(kit.busy) }));
  }
}

/** The planner's visit for one stage. `bounds` are first and last start that what has already happened leaves. */
export function toChainVisit(
  axis: PlanningAxis,
  request: PlanRequest,
  clinics: readonly ClinicResources[],
  time: PatientTime,
  visit: VisitToPlan,
  follows: number | null,
  bounds: { readonly first: number; readonly last: number },
): ChainVisit {
  const lengthSlots = slotsOf(request, visit);
  const inTime = axis.range(bounds.first, bounds.last);
  const allowed = and(erode(time.possible, lengthSlots), inTime);
  const lifted = and(erode(time.possibleIfLifted, lengthSlots), inTime);
  const wished = time.wished === null ? null : erode(time.wished, lengthSlots);
  const { kept } = visit;
  const options =
    kept === null
      ? clinics.map((each) => freeOption(request, each, visit, lengthSlots, allowed, lifted))
      : clinics.filter((each) => each.clinic.id === kept.clinicId).map((each) => keptOption(axis, each, kept));
  return { key: visit.stage.code, follows, options, wished };
}

/** Length of a visit on the grid, with the travel block of a visit at home. */
function slotsOf({ patient }: PlanRequest, { stage }: VisitToPlan): number {
  const travel = stage.mayTravel ? patient.homeVisitMinutes : 0;
  return Math.ceil((stage.chairMinutes.typical + travel) / SLOT_MINUTES);
}

function freeOption(
  { wishes, patient }: PlanRequest,
  resources: ClinicResources,
  { stage }: VisitToPlan,
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
    clinicians: able.map(({ key, free }) => ({ key, free, placementCost: null, refused: own !== null && key !== own })),
    chairs: resources.chairs.filter((each) => each.wheelchairRoom || !patient.wheelchairRoom),
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
  const slot = axis.slotUntil(kept.startMs);
  const free = axis.full();
  return {
    clinic: resources.clinic.id,
    refused: false,
    lengthSlots: axis.slotFrom(kept.endMs) - slot,
    open: free,
    clinicians: [{ key: kept.clinicianId, free, placementCost: null, refused: false }],
    chairs: [{ key: kept.chairId, free }],
    assistants: null,
    kits: [],
    allowed: axis.range(slot, slot),
    allowedIfLifted: null,
  };
}
