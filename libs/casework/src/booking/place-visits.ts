import type { CasePlanVisit } from '@archwright/protocol';
import { Appointment, AppointmentStage, HomeVisit, uuidv7, type ClaimRequest, type Stage } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { PlanStaleError } from '../planning/stored-plan.js';
import { travelMinutesOf, type VisitToClaim } from './claims.js';
import type { LockedCase } from './locked-case.js';

/** Visits of a plan as appointments: those that move and those that are new. */
export interface PlacedVisits {
  readonly toClaim: readonly VisitToClaim[];
  readonly movedIds: readonly string[];
  readonly newIds: readonly string[];
}

/** Writes a plan's visits as appointments; their time is claimed afterwards. A booked visit keeps its row and its hold. */
export async function placeVisits(
  tx: EntityManager,
  locked: LockedCase,
  visits: readonly CasePlanVisit[],
  hold: NonNullable<ClaimRequest['hold']> | null,
  now: Date,
): Promise<PlacedVisits> {
  const placed: VisitToClaim[] = [];
  const movedIds: string[] = [];
  const newIds: string[] = [];
  for (const visit of visits) {
    const stage = stageOf(locked, visit);
    const booked = locked.bookings.find((each) => each.stage.id === stage.id)?.appointment;
    if (booked === undefined) {
      const appointmentId = await insertVisit(tx, locked, visit, stage, hold, now);
      newIds.push(appointmentId);
      placed.push({ visit, appointmentId, hold: hold });
    } else {
      await moveVisit(tx, locked, booked, visit);
      movedIds.push(booked.id);
      placed.push({ visit, appointmentId: booked.id, hold: holdOf(locked, booked) });
    }
  }
  return { toClaim: placed, movedIds, newIds };
}

function stageOf({ loaded }: LockedCase, visit: CasePlanVisit): Stage {
  const stage = loaded.rows.stages.find(({ code, round }) => code === visit.stage && round === visit.round);
  if (stage === undefined) throw new PlanStaleError(`The case has no stage ${visit.stage} of that round any more.`);
  return stage;
}

/** A provisional visit stays under the case's hold when it moves. */
function holdOf({ hold }: LockedCase, { state, holdId }: Appointment): NonNullable<ClaimRequest['hold']> | null {
  return state === 'provisional' && hold !== null && hold.id === holdId ? { id: hold.id, until: hold.expiresAt } : null;
}

async function insertVisit(
  tx: EntityManager,
  locked: LockedCase,
  visit: CasePlanVisit,
  stage: Stage,
  hold: NonNullable<ClaimRequest['hold']> | null,
  now: Date,
): Promise<string> {
  const id = uuidv7();
  await tx.insert(Appointment, {
    ...timesAndPlace(visit, locked),
    id,
    patientId: locked.patient.id,
    holdId: hold?.id ?? null,
    state: hold === null ? 'booked' : 'held',
    uid: id,
    createdAt: now,
  });
  await tx.insert(AppointmentStage, { id: uuidv7(), appointmentId: id, stageId: stage.id });
  await keepPlace(tx, locked, id, visit);
  return id;
}

async function moveVisit(
  tx: EntityManager,
  locked: LockedCase,
  { id, version }: Appointment,
  visit: CasePlanVisit,
): Promise<void> {
  await tx.update(
    Appointment,
    { id },
    { ...timesAndPlace(visit, locked), confirmedByPatientAt: null, version: version + 1 },
  );
  await keepPlace(tx, locked, id, visit);
}

/** A visit at home says where; the address stays with the patient's identity. */
async function keepPlace(
  tx: EntityManager,
  { treatmentCase: { visitPlace } }: LockedCase,
  appointmentId: string,
  { homeTravelMinutes }: CasePlanVisit,
): Promise<void> {
  await tx.delete(HomeVisit, { appointmentId });
  if (homeTravelMinutes === null) return;
  const placeKind = visitPlace === 'care-home' ? visitPlace : 'home';
  await tx.insert(HomeVisit, { id: uuidv7(), appointmentId, placeKind, travelBlockMinutes: 2 * homeTravelMinutes });
}

/** The way is the patient's to the clinic, or the clinician's to the patient. */
function timesAndPlace(visit: CasePlanVisit, { patient }: LockedCase) {
  const travelMinutes = visit.homeTravelMinutes ?? travelMinutesOf(patient);
  return {
    clinicId: visit.clinicId,
    chairId: visit.chairId === '' ? null : visit.chairId,
    clinicianId: visit.clinicianId,
    assistantId: visit.assistantId,
    startsAt: new Date(visit.startMs),
    endsAt: new Date(visit.endMs),
    travelBeforeMinutes: travelMinutes,
    travelAfterMinutes: travelMinutes,
  };
}
