import type { RequestOffers } from '@archwright/contracts';
import type { CaseChain, PlanRequest, PracticeSnapshot } from '@archwright/protocol';
import { Clinic, Patient, TreatmentCase, loadPatientSnapshot, loadSnapshot, type LabStep } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadChain, type LoadedChain } from '../cases/chain.js';
import { RecordNotFoundError } from '../errors.js';
import { hasBegun, loadBookings, type StageBooking } from './bookings.js';
import { dueFromMs, loadDueReviews, onlyReview, waitsForReviews, withReviews } from './due-reviews.js';
import { fixedStages, fixedSteps, progressWithArrivals } from './fixed-parts.js';
import { withLongerWaits } from './relaxed-lags.js';
import { requireClinic } from './scope.js';

const WEEK_MS = 7 * 86_400_000;
/** Healing takes months: the paths with surgery or conditioning need the longer look. */
const HORIZON_WEEKS = 16;
const HORIZON_WITH_HEALING_WEEKS = 32;
const SLOW_MILESTONES = ['healing', 'extraction', 'surgery'];

/** A case with everything that planning it reads, as it stood at one instant. */
export interface PlanningBasis {
  readonly treatmentCase: TreatmentCase;
  readonly patient: Patient;
  readonly loaded: LoadedChain;
  readonly bookings: readonly StageBooking[];
  readonly request: PlanRequest;
}

export interface PlanningOptions {
  readonly notBefore?: string | undefined;
  readonly clinicIds?: readonly string[] | undefined;
  readonly relax?: RequestOffers['relax'];
  /** A check that is due, to be planned by itself. */
  readonly review?: string | undefined;
  /** Bookings that keep their place; the others are planned anew. */
  readonly keeps: (booking: StageBooking) => boolean;
  readonly keepsStep: (loaded: LoadedChain, bookings: readonly StageBooking[]) => (step: LabStep) => boolean;
  /** Look at clinics beyond the accepted ones as well: for finding a way out. */
  readonly everyClinic: boolean;
  /** What is read once for many cases; left out: read for this one, without its own bookings. */
  readonly shared?: SharedPractice | undefined;
}

/** A practice that several cases are planned in, over the same weeks. */
export interface SharedPractice {
  readonly practice: PracticeSnapshot;
  readonly horizonWeeks: number;
}

/**
 * @throws {RecordNotFoundError} for a case that is unknown or of clinics that are not the actor's
 */
export async function loadPlanningBasis(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  options: PlanningOptions,
  now: Date,
): Promise<PlanningBasis> {
  const treatmentCase = await tx.findOneBy(TreatmentCase, { id: caseId });
  if (treatmentCase === null) throw new RecordNotFoundError('case', caseId);
  requireClinic(actor, treatmentCase.clinicIds, 'case', caseId);
  const loaded = await loadChain(tx, caseId);
  const bookings = await loadBookings(tx, loaded.rows.stages);
  const patient = await tx.findOneByOrFail(Patient, { id: treatmentCase.patientId });
  const request = await loadRequest(tx, { treatmentCase, loaded, bookings }, options, now);
  return { treatmentCase, patient, loaded, bookings, request };
}

async function loadRequest(
  tx: EntityManager,
  { treatmentCase, loaded, bookings }: Pick<PlanningBasis, 'treatmentCase' | 'loaded' | 'bookings'>,
  options: PlanningOptions,
  now: Date,
): Promise<PlanRequest> {
  const nowMs = now.getTime();
  const booked = bookings.filter((booking) => !hasBegun(booking)).map(({ stage }) => stage.code);
  const reviews = await loadDueReviews(tx, treatmentCase.id, options.review);
  const chain = withReviews(loaded.chain, reviews);
  const { shared } = options;
  const horizonWeeks = shared?.horizonWeeks ?? horizonWeeksOf(chain);
  const anyClinic = options.relax?.anyClinic === true;
  const accepted = options.clinicIds ?? treatmentCase.clinicIds;
  const clinicIds = anyClinic || options.everyClinic ? await everyClinic(tx, accepted) : accepted;
  const withoutCaseIds = [treatmentCase.id];
  const scope = { clinicIds, fromMs: nowMs, untilMs: nowMs + (horizonWeeks + 1) * WEEK_MS, withoutCaseIds };
  const practice = shared === undefined ? await loadSnapshot(tx, scope, now) : partFor(shared.practice, clinicIds);
  const { patientId, homeTravelMinutes, wishes } = treatmentCase;
  const patient = await loadPatientSnapshot(tx, patientId, { ...scope, homeTravelMinutes, wishes }, now);
  if (patient === null) throw new RecordNotFoundError('patient', patientId);
  const zone = practice.clinics[0]?.zone ?? patient.zone;
  return {
    chain,
    progress: onlyReview(progressWithArrivals(loaded.progress, bookings), reviews, booked),
    fixedStages: fixedStages(bookings, options.keeps),
    fixedSteps: fixedSteps(loaded.rows.steps, nowMs, options.keepsStep(loaded, bookings)),
    practice: await withRoomyBatches(tx, practice, treatmentCase.id, {
      units: loaded.rows.arches.length,
      onlyOwn: shared !== undefined,
    }),
    patient,
    wishes: {
      clinicIds: anyClinic ? clinicIds : accepted,
      clinicianId: options.relax?.anyClinician === true ? null : treatmentCase.clinicianId,
      laboratoryIds: practice.laboratories.map(({ id }) => id),
    },
    nowMs,
    notBeforeMs: notBeforeMs(options.notBefore, bookings, dueFromMs(reviews, zone)),
    horizonWeeks,
    rush: false,
    lagOverrides: withLongerWaits(chain, waitsForReviews(chain, reviews), options.relax?.extraWaitDays ?? {}),
    ignoreUnavailable: options.relax?.ignoreUnavailable === true,
  };
}

export function horizonWeeksOf({ stages }: CaseChain): number {
  const isSlow = stages.some(({ milestones }) => milestones.some((each) => SLOW_MILESTONES.includes(each)));
  return isSlow ? HORIZON_WITH_HEALING_WEEKS : HORIZON_WEEKS;
}

/** The clinics that matter to a case, in its order. */
function partFor(practice: PracticeSnapshot, clinicIds: readonly string[]): PracticeSnapshot {
  return { ...practice, clinics: clinicIds.flatMap((id) => practice.clinics.find((clinic) => clinic.id === id) ?? []) };
}

/** Nothing is planned into a visit that has begun: its time is the case's own and would look free otherwise. */
function notBeforeMs(
  notBefore: string | undefined,
  bookings: readonly StageBooking[],
  dueMs: number | null,
): number | null {
  const bounds = bookings.filter(hasBegun).map(({ appointment }) => appointment.endsAt.getTime());
  if (notBefore !== undefined) bounds.push(Date.parse(notBefore));
  if (dueMs !== null) bounds.push(dueMs);
  return bounds.length === 0 ? null : Math.max(...bounds);
}

/** Accepted clinics first, then the others of the practice. */
async function everyClinic(tx: EntityManager, accepted: readonly string[]): Promise<string[]> {
  const all = await tx.find(Clinic, { select: { id: true }, order: { name: 'ASC', id: 'ASC' } });
  return [...new Set([...accepted, ...all.map(({ id }) => id)])];
}

/**
 * Runs that the case could join: with room for all of its arches, and with somebody else's work in them, since a run of
 * this case alone ends when its work moves. When several cases are planned together (`onlyOwn`), the runs that it is in
 * already: two cases must not be promised the same room.
 */
async function withRoomyBatches(
  tx: EntityManager,
  practice: PlanRequest['practice'],
  caseId: string,
  { units, onlyOwn }: { readonly units: number; readonly onlyOwn: boolean },
): Promise<PlanRequest['practice']> {
  const rows: { id: string }[] = await tx.query(
    `SELECT b.id FROM batch b WHERE b.size >= $2 + (
       SELECT nullif(coalesce(sum(m.units), 0), 0) FROM batch_member m JOIN lab_step s ON s.id = m.lab_step_id
       WHERE m.batch_id = b.id AND s.case_id <> $1)
     AND (NOT $3 OR EXISTS (SELECT FROM batch_member m JOIN lab_step s ON s.id = m.lab_step_id
       WHERE m.batch_id = b.id AND s.case_id = $1))`,
    [caseId, units, onlyOwn],
  );
  const roomy = new Set(rows.map(({ id }) => id));
  return {
    ...practice,
    laboratories: practice.laboratories.map((laboratory) => ({
      ...laboratory,
      workCentres: laboratory.workCentres.map((centre) => ({
        ...centre,
        openBatches: centre.openBatches.filter(({ id }) => roomy.has(id)),
      })),
    })),
  };
}
