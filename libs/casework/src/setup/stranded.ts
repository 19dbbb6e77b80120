import {
  closedInterval,
  expandRule,
  normalise,
  type ClosedDays,
  type Interval,
  type LocalRule,
} from '@archwright/calendar';
import type { ClinicSnapshot, CourierSnapshot, LaboratorySnapshot, PracticeSnapshot } from '@archwright/protocol';
import type { BookedTime, BookedVisit, BookedWay, BookedWork } from './booked-ahead.js';

/** Closed time of chairs, kits and bench places by id: a snapshot joins it with what is booked on them. */
export type ClosedResources = ReadonlyMap<string, readonly Interval[]>;

const DAY_MS = 86_400_000;

/**
 * Why booked time has no place in the practice as it stands, in a sentence; null when it has one. Only what a change of
 * the practice can bring about is looked at, not whether two bookings meet.
 */
export function whyStranded(booked: BookedTime, practice: PracticeSnapshot, closed: ClosedResources): string | null {
  switch (booked.kind) {
    case 'visit':
      return whyVisit(booked, practice, closed);
    case 'lab-work':
      return whyWork(booked, practice, closed);
    case 'courier':
      return whyWay(booked, practice);
  }
}

function whyVisit(visit: BookedVisit, { clinics }: PracticeSnapshot, closed: ClosedResources): string | null {
  const clinic = clinics.find(({ id }) => id === visit.clinicId);
  if (clinic === undefined) return 'Its clinic is gone.';
  if (isClosed(clinic.closures, visit)) return `${clinic.name} is closed then.`;
  if (!isOpen(clinic.opening, visit)) return `${clinic.name} is not open for all of it.`;
  return whyPeople(visit, clinic) ?? whyThings(visit, clinic, closed);
}

function whyPeople({ clinicianId, assistantId, ...time }: BookedVisit, clinic: ClinicSnapshot): string | null {
  const clinician = clinic.clinicians.find(({ id }) => id === clinicianId);
  if (clinician === undefined) return `Its clinician does not work at ${clinic.name} any more.`;
  if (isClosed(clinician.absences, time)) return `${clinician.name} is away then.`;
  if (!isOpen(clinician.working, time)) return `${clinician.name} does not work at ${clinic.name} for all of it.`;
  if (assistantId === null) return null;
  const assistant = clinic.assistants.find(({ id }) => id === assistantId);
  if (assistant === undefined) return `Its assistant does not work at ${clinic.name} any more.`;
  if (isClosed(assistant.absences, time)) return 'Its assistant is away then.';
  return isOpen(assistant.working, time) ? null : `Its assistant does not work at ${clinic.name} for all of it.`;
}

function whyThings(
  { chairId, kitIds, ...time }: BookedVisit,
  clinic: ClinicSnapshot,
  closed: ClosedResources,
): string | null {
  const chair = clinic.chairs.find(({ id }) => id === chairId);
  if (chairId !== null && chair === undefined) return 'Its chair is out of use.';
  if (chair !== undefined && isTaken(closed, chair.id, time)) return `${chair.label} is closed then.`;
  const kits = kitIds.map((kitId) => clinic.kits.find(({ id }) => id === kitId));
  if (kits.includes(undefined)) return 'A set of instruments that it needs is out of use.';
  const isAway = kitIds.some((kitId) => isTaken(closed, kitId, time));
  return isAway ? 'A set of instruments that it needs is away then.' : null;
}

function whyWork(
  { workCentreId, placeId, ...time }: BookedWork,
  { laboratories }: PracticeSnapshot,
  closed: ClosedResources,
): string | null {
  const found = findCentre(laboratories, workCentreId);
  if (found === undefined) return 'Its work centre is gone.';
  const { laboratory, centre } = found;
  if (!centre.places.some(({ id }) => id === placeId)) return 'Its bench place is out of use.';
  if (isTaken(closed, placeId, time)) return 'Its bench place is closed then.';
  if (isClosed(centre.closures, time)) return `${laboratory.name} is closed then.`;
  return isOpen(centre.working, time) ? null : `Nobody works there at ${laboratory.name} for all of it.`;
}

function findCentre(laboratories: readonly LaboratorySnapshot[], id: string) {
  for (const laboratory of laboratories) {
    const centre = laboratory.workCentres.find((each) => each.id === id);
    if (centre !== undefined) return { laboratory, centre };
  }
  return undefined;
}

function whyWay({ courierId, direction, ...time }: BookedWay, { couriers }: PracticeSnapshot): string | null {
  const courier = couriers.find(({ id }) => id === courierId);
  if (courier === undefined) return 'Its courier does not run any more.';
  return leavesAt(courier, direction, time.startMs) ? null : 'No courier leaves then.';
}

function leavesAt({ toLab, toClinic }: CourierSnapshot, direction: BookedWay['direction'], atMs: number): boolean {
  const rule = direction === 'to-lab' ? toLab : toClinic;
  return expandRule({ ...rule, minutes: 1 }, { startMs: atMs, endMs: atMs + 1 }).some(
    ({ startMs }) => startMs === atMs,
  );
}

function isOpen(rules: readonly LocalRule[], { startMs, endMs }: Interval): boolean {
  // Hours may have begun the day before, and stretches that meet are one.
  const window = { startMs: startMs - DAY_MS, endMs: endMs + DAY_MS };
  const open = normalise(rules.flatMap((rule) => expandRule(rule, window)));
  return open.some((each) => each.startMs <= startMs && each.endMs >= endMs);
}

function isClosed(closures: readonly (ClosedDays | Interval)[], time: Interval): boolean {
  const closed = closures.map((each) => ('zone' in each ? closedInterval(each) : each));
  return closed.some((each) => each.startMs < time.endMs && each.endMs > time.startMs);
}

function isTaken(closed: ClosedResources, id: string, time: Interval): boolean {
  return (closed.get(id) ?? []).some((each) => each.startMs < time.endMs && each.endMs > time.startMs);
}
