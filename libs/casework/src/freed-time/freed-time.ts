import { dayNumber, localDate } from '@archwright/calendar';
import type { FreedTimeQuery, FreedTimeTaker, FreedTimeView } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Clinic, PatientIdentity, Practitioner, PractitionerClinic, readInOrganisation } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadChains } from '../cases/chain.js';
import { RecordNotFoundError } from '../errors.js';
import { loadJointCase, loadJointPractice } from '../planning/joint-practice.js';
import { horizonWeeksOf } from '../planning/planning-basis.js';
import type { ReplanBasis } from '../planning/replan-basis.js';
import { requireClinic } from '../planning/scope.js';
import type { PlanningMeans } from '../planning/searches.js';
import { findCandidates, type Candidate } from './candidates.js';
import type { FreedInterval, TakersPlan, TakersSearch } from './search-takers.js';
import { tell } from '../tell.js';
import { gainTold } from './words.js';

/**
 * Which open cases gain most by taking time that has become free, the best first. Exact for each case looked at, while
 * every other case keeps its bookings; nothing is changed or kept.
 *
 * @throws {RecordNotFoundError} for a clinic that is not the actor's, or a person who does not treat there
 */
export async function freedTimeOf(
  { db, searches, signal }: PlanningMeans,
  actor: Actor,
  { clinicId, clinicianId, startsAt, endsAt, limit }: FreedTimeQuery,
  now: Date,
): Promise<FreedTimeView> {
  const freed = { clinicId, clinicianId, startMs: Date.parse(startsAt), endMs: Date.parse(endsAt) };
  requireToCome(freed, now);
  const { organisationId } = actor;
  const asked = await readInOrganisation(db, organisationId, (tx) => loadQuestion(tx, actor, freed, now));
  const plans = await searches.takers(asked.search, signal);
  const takers = await readInOrganisation(db, organisationId, (tx) => takersOf(tx, asked, plans));
  return {
    zone: asked.zone,
    takers: takers.sort(byGain).slice(0, limit),
    casesLookedAt: asked.bases.length,
    casesLeftOut: asked.leftOut,
  };
}

function requireToCome({ startMs, endMs }: FreedInterval, now: Date): void {
  if (startMs > now.getTime() && endMs > startMs) return;
  throw new RequestInvalidError([
    { path: 'startsAt', problem: 'is past, or not before endsAt', accepted: `after ${now.toISOString()}` },
  ]);
}

interface Question {
  readonly zone: string;
  readonly bases: readonly ReplanBasis[];
  readonly search: TakersSearch;
  readonly leftOut: number;
}

async function loadQuestion(tx: EntityManager, actor: Actor, freed: FreedInterval, now: Date): Promise<Question> {
  const { clinicId, clinicianId } = freed;
  requireClinic(actor, [clinicId], 'clinic', clinicId);
  const clinic = await tx.findOneBy(Clinic, { id: clinicId });
  if (clinic === null) throw new RecordNotFoundError('clinic', clinicId);
  const isThere = await tx.existsBy(PractitionerClinic, { practitionerId: clinicianId, clinicId });
  const clinician = isThere ? await tx.findOneBy(Practitioner, { id: clinicianId, role: 'clinician' }) : null;
  if (clinician === null) throw new RecordNotFoundError('clinician', clinicianId);
  const { looked, leftOut } = await findCandidates(tx, actor, freed, clinician.skills);
  const { bases, held } = await loadCandidates(tx, actor, looked, now);
  const cases = bases.map(({ treatmentCase: { id }, search: { request, booked } }) => ({
    caseId: id,
    request,
    booked,
  }));
  return { zone: clinic.zone, bases, leftOut, search: { freed, cases, held } };
}

async function loadCandidates(
  tx: EntityManager,
  actor: Actor,
  candidates: readonly Candidate[],
  now: Date,
): Promise<{ bases: ReplanBasis[]; held: TakersSearch['held'] }> {
  const ids = candidates.map(({ caseId }) => caseId);
  if (ids.length === 0) return { bases: [], held: new Map() };
  const chains = await loadChains(tx, ids);
  const horizonWeeks = Math.max(...[...chains.values()].map(({ chain }) => horizonWeeksOf(chain)));
  const clinicIds = [...new Set(candidates.flatMap((each) => each.clinicIds))];
  const shared = await loadJointPractice(tx, { clinicIds, horizonWeeks, movableFrom: now }, now);
  const bases: ReplanBasis[] = [];
  for (const caseId of ids) bases.push(await loadJointCase(tx, actor, { caseId, wanted: null }, shared, now));
  return { bases, held: shared.held };
}

async function takersOf(
  tx: EntityManager,
  { bases, zone }: Question,
  plans: readonly TakersPlan[],
): Promise<FreedTimeTaker[]> {
  const identities = await tx.findBy(PatientIdentity, { patientId: In(bases.map(({ patient }) => patient.id)) });
  return plans.flatMap((found) => {
    const basis = bases.find(({ treatmentCase }) => treatmentCase.id === found.caseId);
    const identity = identities.find(({ patientId }) => patientId === basis?.patient.id) ?? null;
    return basis === undefined ? [] : takerOf(basis, identity, found, zone);
  });
}

function takerOf(
  { treatmentCase, patient, bookings }: ReplanBasis,
  identity: PatientIdentity | null,
  { stage, plan, movedVisits }: TakersPlan,
  zone: string,
): FreedTimeTaker[] {
  const visit = plan.visits.find((each) => each.stage === stage);
  const booked = bookings.find((each) => each.stage.code === stage && each.appointment.state === 'booked')?.appointment;
  if (visit === undefined || booked === undefined) return [];
  const dayOf = (ms: number) => localDate(ms, zone);
  const delivered = plan.visits.filter(({ isDelivery }) => isDelivery).at(-1);
  const deliveredNow = bookings.find((each) => each.stage.code === delivered?.stage)?.appointment;
  const hasDelivery = delivered !== undefined && deliveredNow !== undefined;
  const deliveryBefore = hasDelivery ? dayOf(deliveredNow.startsAt.getTime()) : null;
  const deliveryOn = hasDelivery ? dayOf(delivered.startMs) : null;
  const gain = {
    visitDaysEarlier: daysBetween(dayOf(visit.startMs), dayOf(booked.startsAt.getTime())),
    deliveryDaysEarlier: deliveryBefore === null || deliveryOn === null ? 0 : daysBetween(deliveryOn, deliveryBefore),
    movedVisits,
  };
  return [
    {
      caseId: treatmentCase.id,
      caseNumber: treatmentCase.number,
      patientId: patient.id,
      patientName: identity === null ? '' : `${identity.givenName} ${identity.familyName}`,
      phone: identity?.phone ?? null,
      stage,
      title: visit.title,
      appointmentId: booked.id,
      before: booked.startsAt.toISOString(),
      startsAt: new Date(visit.startMs).toISOString(),
      endsAt: new Date(visit.endMs).toISOString(),
      deliveryBefore,
      deliveryOn,
      ...gain,
      ...tell(gainTold(visit.title, gain)),
    },
  ];
}

const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** Earliest placement first, then the visit itself, then the fewest moved visits. */
function byGain(one: FreedTimeTaker, other: FreedTimeTaker): number {
  return (
    other.deliveryDaysEarlier - one.deliveryDaysEarlier ||
    other.visitDaysEarlier - one.visitDaysEarlier ||
    one.movedVisits - other.movedVisits ||
    (one.caseNumber < other.caseNumber ? -1 : 1)
  );
}
