import type { PreviewCancel, PreviewMove, Ripple } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { Appointment, AppointmentStage, Stage, inOrganisation, type Plan } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireCase } from '../cases/case-access.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { loadReplanBasis, isMovable, type ReplanBasis } from '../planning/replan-basis.js';
import type { FoundPlan } from '../planning/search.js';
import type { PlanningMeans } from '../planning/searches.js';
import { NO_CHANGE, loadPlan, requireHash, storePlan, type PlanChange } from '../planning/stored-plan.js';
import { applyPlan } from './apply-plan.js';
import { keptOnly } from './kept-plan.js';
import { rippleView } from './ripple-view.js';

const GRID_MS = 5 * 60_000;
const RIPPLE: Plan['kind'] = 'ripple';

/** The visit cannot be there, or nothing that follows it could be. */
export class NoSuchTimeError extends DomainError {
  constructor(sentence: string) {
    super('casework.no-such-time', sentence);
  }
}

/**
 * What it would take to move a visit to a start that a person chose: as many other visits as possible stay, then as much
 * laboratory work, unless placement is to come as early as possible. Nothing is changed; the plan is kept so that exactly it can be applied.
 *
 * @throws {NoSuchTimeError} when the visit cannot start then
 */
export async function previewMove(
  { db, searches }: PlanningMeans,
  actor: Actor,
  { appointmentId, startsAt, clinicianId, reason, aim }: PreviewMove,
  now: Date,
): Promise<Ripple> {
  const startMs = Date.parse(startsAt);
  if (startMs <= now.getTime() || startMs % GRID_MS !== 0)
    throw new NoSuchTimeError(
      `${startsAt} is past or not a whole five minutes. Choose a later start on the five minutes.`,
    );
  const { organisationId } = actor;
  const { basis, stage } = await inOrganisation(db, organisationId, (tx) =>
    loadChanging(tx, actor, appointmentId, now),
  );
  const chosen = { stage: stage.code, startMs, clinicianId: clinicianId ?? null };
  const replan = await searches.replan({ ...basis.search, chosen }, aim);
  if (replan === null)
    throw new NoSuchTimeError(
      'The visit cannot start then: chair, people or patient are taken, or the waits before and after it do not fit. ' +
        'Look at its other starts, or cancel it and plan the rest anew.',
    );
  const { found } = replan;
  const change = { ...NO_CHANGE, reason: reason ?? null };
  return inOrganisation(db, organisationId, (tx) => kept(tx, actor, basis, { label: 'Move', found, change }, now));
}

/**
 * What it would take to take a visit out of its time: the fewest other visits move, or it and all later ones are dropped.
 *
 * @throws {NoSuchTimeError} when no other time is left for it
 */
export async function previewCancel(
  { db, searches }: PlanningMeans,
  actor: Actor,
  { appointmentId, reason, notBefore, then }: PreviewCancel,
  now: Date,
): Promise<Ripple> {
  const { organisationId } = actor;
  const changing = await inOrganisation(db, organisationId, (tx) => loadChanging(tx, actor, appointmentId, now));
  const { basis, stage } = changing;
  if (then === 'drop-rest')
    return inOrganisation(db, organisationId, (tx) => dropRest(tx, actor, basis, stage, reason, now));
  const againMs = notBefore === undefined ? 0 : Date.parse(notBefore);
  const replan = await searches.replan(awayFrom(changing, againMs));
  if (replan === null)
    throw new NoSuchTimeError(
      'No other time is left for this visit within the waits. Drop the rest and ask for offers.',
    );
  const { found } = replan;
  const change = { ...NO_CHANGE, reason };
  return inOrganisation(db, organisationId, (tx) => kept(tx, actor, basis, { label: 'Plan anew', found, change }, now));
}

/**
 * The patient is not there at the cancelled time, nor between the visit before it and the time from which they can come
 * again; and the visit costs nothing to place elsewhere.
 */
function awayFrom({ basis, stage, appointment }: Changing, againMs: number) {
  const { request, booked } = basis.search;
  const [startMs, endMs] = [appointment.startsAt.getTime(), appointment.endsAt.getTime()];
  const endsBefore = basis.bookings
    .map((each) => each.appointment)
    .filter(({ startsAt }) => startsAt < appointment.startsAt)
    .map(({ endsAt }) => endsAt.getTime() + request.patient.travelMinutes * 60_000);
  const away =
    againMs <= endMs ? { startMs, endMs } : { startMs: Math.min(startMs, Math.max(0, ...endsBefore)), endMs: againMs };
  const patient = { ...request.patient, busy: [...request.patient.busy, away] };
  return {
    ...basis.search,
    request: { ...request, patient },
    booked: booked.filter((each) => each.stage !== stage.code),
    chosen: null,
  };
}

async function dropRest(
  tx: EntityManager,
  actor: Actor,
  basis: ReplanBasis,
  stage: Stage,
  reason: string,
  now: Date,
): Promise<Ripple> {
  const dropped = basis.bookings.filter(
    (booking) => isMovable(booking, now) && booking.stage.position >= stage.position,
  );
  const codes = basis.loaded.chain.stages
    .filter(({ code }) => code === stage.code || dropped.some((booking) => booking.stage.code === code))
    .map(({ code }) => code);
  const change: PlanChange = {
    cancelledAppointmentIds: dropped.map(({ appointment }) => appointment.id),
    droppedStages: codes,
    reason,
  };
  const found: FoundPlan = {
    plan: keptOnly(basis, dropped, now),
    objective: { dropped: change.cancelledAppointmentIds.length },
  };
  return kept(tx, actor, basis, { label: 'Drop the rest', found, change }, now);
}

async function kept(
  tx: EntityManager,
  actor: Actor,
  basis: ReplanBasis,
  { label, found, change }: { label: string; found: FoundPlan; change: PlanChange },
  now: Date,
): Promise<Ripple> {
  const stored = await storePlan(tx, actor, basis, { kind: RIPPLE, label, found, change }, now);
  return rippleView(tx, basis, stored, now);
}

interface Changing {
  readonly basis: ReplanBasis;
  readonly stage: Stage;
  readonly appointment: Appointment;
}

/** A booked visit to come, or one that was missed and has to be planned again. */
async function loadChanging(tx: EntityManager, actor: Actor, appointmentId: string, now: Date): Promise<Changing> {
  const appointment = await tx.findOneBy(Appointment, { id: appointmentId });
  if (appointment === null) throw new RecordNotFoundError('appointment', appointmentId);
  const { state, startsAt } = appointment;
  const isToCome = (state === 'booked' || state === 'provisional') && startsAt > now;
  if (!isToCome && state !== 'missed')
    throw new WrongStateError(
      'The visit',
      startsAt > now ? state : `${state} and past`,
      'booked and to come, or missed',
    );
  const links = await tx.findBy(AppointmentStage, { appointmentId });
  const [stage] = await tx.find(Stage, {
    where: { id: In(links.map(({ stageId }) => stageId)) },
    order: { position: 'ASC' },
  });
  if (stage === undefined) throw new RecordNotFoundError('stage of appointment', appointmentId);
  const basis = await loadReplanBasis(tx, actor, stage.caseId, stage.code, now);
  return { basis, stage, appointment };
}

/**
 * Applies exactly the plan that was previewed.
 *
 * @returns the id of the case
 * @throws {PlanStaleError} when the case or the time it needs has changed since
 */
export async function applyRipple(
  tx: EntityManager,
  actor: Actor,
  rippleId: string,
  planHash: string,
  now: Date,
): Promise<string> {
  const plan = await loadPlan(tx, rippleId, [RIPPLE]);
  // First, so that who may not see the case is not told either that there is such a plan.
  await requireCase(tx, actor, plan.caseId);
  requireHash(plan, planHash);
  await applyPlan(tx, actor, plan, now);
  return plan.caseId;
}
