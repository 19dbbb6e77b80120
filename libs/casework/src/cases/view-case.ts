import type { CaseView } from '@archwright/contracts';
import { isToCome } from '@archwright/protocol';
import { Plan } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireCase } from './case-access.js';
import { loadOverviews, type CaseOverview } from './case-overview.js';
import { pathTitles } from './case-titles.js';
import { linkedCases } from './linked-cases.js';
import { eventTold } from './event-words.js';
import { RecordNotFoundError } from '../errors.js';
import { tell } from '../tell.js';

type LabStepRow = Omit<CaseView['labSteps'][number], 'title' | 'workCentre' | 'startsAt' | 'endsAt'> & {
  readonly startsAt: Date | null;
  readonly endsAt: Date | null;
};

/**
 * One case as one line: plan, reality, alerts, who did what.
 *
 * @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics or laboratories
 */
export async function viewCase(tx: EntityManager, actor: Actor, caseId: string, now: Date): Promise<CaseView> {
  const overview = await loadOverview(tx, actor, caseId, now);
  const { treatmentCase, summary, zone, hold, alerts } = overview;
  return {
    ...summary,
    ...(await lineOf(tx, overview, now)),
    ...(await linkedCases(tx, actor, treatmentCase)),
    stateReason: treatmentCase.stateReason,
    reviewOn: treatmentCase.reviewOn,
    clinicIds: treatmentCase.clinicIds,
    zone,
    clinicianId: treatmentCase.clinicianId,
    wishes: treatmentCase.wishes,
    visitPlace: { place: treatmentCase.visitPlace, travelMinutes: treatmentCase.homeTravelMinutes },
    consentOn: treatmentCase.consentOn,
    treatmentApprovedOn: treatmentCase.treatmentApprovedOn,
    medicinesAskedOn: treatmentCase.medicinesAskedOn,
    plannable: isPlannable(overview),
    hold: hold === null ? null : await holdOf(tx, hold.id, hold.planId, hold.expiresAt),
    alerts: alerts.map(({ id, stageId, reason, state }) => ({
      id,
      stage: stageCode(overview, stageId),
      reason,
      state,
    })),
    events: await eventsOf(tx, overview),
  };
}

function isPlannable({ treatmentCase: { state }, stages }: CaseOverview): boolean {
  const hasFirmTime = ({ visit }: CaseOverview['stages'][number]): boolean =>
    visit !== null && !['held', 'provisional', 'missed'].includes(visit.state);
  return (
    (state === 'open' || state === 'enquiry') &&
    stages.some((stage) => stage.chained && isToCome(stage.row.state) && !hasFirmTime(stage))
  );
}

/** @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics or laboratories */
export async function loadOverview(tx: EntityManager, actor: Actor, caseId: string, now: Date): Promise<CaseOverview> {
  const [overview] = await loadOverviews(tx, [await requireCase(tx, actor, caseId)], now);
  if (overview === undefined) throw new RecordNotFoundError('case', caseId);
  return overview;
}

/** Arches with their paths, and the chain of stages, laboratory steps and ways between the two. */
export async function lineOf(
  tx: EntityManager,
  overview: CaseOverview,
  now: Date,
): Promise<Pick<CaseView, 'arches' | 'stages' | 'labSteps' | 'transports'>> {
  const titles = await pathTitles(tx, overview.treatmentCase.id);
  return {
    arches: overview.arches.map(({ arch, pathVersionId }) => ({
      arch,
      pathVersionId,
      pathTitle: titles.get(pathVersionId) ?? '',
    })),
    stages: overview.stages.map(stageViewOf),
    labSteps: await labStepsOf(tx, overview),
    transports: await transportsOf(tx, overview.treatmentCase.id, now),
  };
}

function stageViewOf({ row, title, isDelivery, isReview, visit }: CaseOverview['stages'][number]) {
  const { id, code, position, round, arches, state } = row;
  return {
    id,
    code,
    title,
    position,
    round,
    arches,
    state,
    isDelivery,
    isReview,
    appointmentId: visit?.appointmentId ?? null,
    appointmentState: visit?.state ?? null,
    startsAt: visit?.startsAt.toISOString() ?? null,
    endsAt: visit?.endsAt.toISOString() ?? null,
    clinicName: visit?.clinicName ?? null,
    clinicianName: visit?.clinicianName ?? null,
  };
}

/** In the order of the chain, then as they are planned. */
async function labStepsOf(tx: EntityManager, { treatmentCase, chain }: CaseOverview): Promise<CaseView['labSteps']> {
  const rows: LabStepRow[] = await tx.query(
    `SELECT s.id, s.code, s.arches, s.round, s.after_stage AS "afterStage", s.before_stage AS "beforeStage", s.state,
       s.state_reason AS "stateReason",
       p.label AS "placeLabel", s.starts_at AS "startsAt", s.ends_at AS "endsAt"
     FROM lab_step s LEFT JOIN bench_place p ON p.id = s.place_id WHERE s.case_id = $1 ORDER BY s.starts_at, s.round, s.id`,
    [treatmentCase.id],
  );
  const position = new Map(chain.steps.map(({ code }, index) => [code, index]));
  return rows
    .sort((one, other) => (position.get(one.code) ?? 0) - (position.get(other.code) ?? 0))
    .map((row) => {
      const part = chain.steps.find(({ code }) => code === row.code);
      return {
        ...row,
        title: part?.title ?? row.code,
        workCentre: part?.workCentre ?? '',
        startsAt: row.startsAt?.toISOString() ?? null,
        endsAt: row.endsAt?.toISOString() ?? null,
      };
    });
}

/** Ways of the courier that were taken or will be; those of a hold only while it lasts. */
async function transportsOf(tx: EntityManager, caseId: string, now: Date): Promise<CaseView['transports']> {
  const legs: { direction: 'to-lab' | 'to-clinic'; departsAt: Date; arrivesAt: Date }[] = await tx.query(
    `SELECT l.direction, l.departs_at AS "departsAt", l.arrives_at AS "arrivesAt"
     FROM courier_leg l LEFT JOIN hold h ON h.id = l.hold_id
     WHERE l.case_id = $1 AND l.state <> 'cancelled'
       AND (l.hold_id IS NULL OR (h.state = 'active' AND h.expires_at > $2))
     ORDER BY l.departs_at, l.id`,
    [caseId, now],
  );
  return legs.map(({ direction, departsAt, arrivesAt }) => ({
    direction,
    departsAt: departsAt.toISOString(),
    arrivesAt: arrivesAt.toISOString(),
  }));
}

async function holdOf(tx: EntityManager, id: string, planId: string, expiresAt: Date): Promise<CaseView['hold']> {
  const { planHash } = await tx.findOneByOrFail(Plan, { id: planId });
  return { id, expiresAt: expiresAt.toISOString(), planHash };
}

const stageCode = ({ stages }: CaseOverview, stageId: string): string =>
  stages.find(({ row }) => row.id === stageId)?.row.code ?? '';

async function eventsOf(tx: EntityManager, { treatmentCase, chain }: CaseOverview): Promise<CaseView['events']> {
  const events: { kind: string; body: object; at: Date; by: string | null }[] = await tx.query(
    `SELECT e.kind, e.body, e.happened_at AS at, u.name AS by
     FROM case_event e LEFT JOIN user_account u ON u.id = e.actor_id WHERE e.case_id = $1 ORDER BY e.sequence`,
    [treatmentCase.id],
  );
  return events.map(({ kind, body, at, by }) => ({
    at: at.toISOString(),
    kind,
    ...tell(eventTold(kind, body, chain)),
    by,
  }));
}
