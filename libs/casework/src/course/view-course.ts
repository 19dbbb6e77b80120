import type { CaseCourse } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadCaptured } from '../capture/captured.js';
import { viewTracing } from '../capture/tracing-view.js';
import { lineOf, loadOverview } from '../cases/view-case.js';
import { photographsOf } from '../photographs/photographs.js';
import { firstPlanOf, stepKey, visitKey } from './first-plan.js';
import { measuredOverVisits } from './measured-over-visits.js';

/** When something was begun and done. */
interface Happened {
  readonly id: string;
  readonly startedAt: Date | null;
  readonly finishedAt: Date | null;
}

/**
 * The course of a case, from its first visit on: what was told first beside what happened, what was measured at which
 * visit, tracings and photographs.
 *
 * @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics
 */
export async function viewCourse(tx: EntityManager, actor: Actor, caseId: string, now: Date): Promise<CaseCourse> {
  const overview = await loadOverview(tx, actor, caseId, now);
  const { stages, labSteps } = await lineOf(tx, overview, now);
  const stageIds = stages.map(({ id }) => id);
  const first = await firstPlanOf(tx, caseId);
  const visited = await visitsOf(tx, stageIds);
  const worked = await stepsOf(tx, caseId);
  const captured = await loadCaptured(tx, stageIds);
  const photographs = (await photographsOf(tx, stageIds)).filter(({ removed }) => removed === null);
  return {
    number: overview.treatmentCase.number,
    zone: overview.zone,
    visits: stages.map(({ id, code, title, round, state, startsAt, appointmentState, clinicianName }) => ({
      ...{ stageId: id, code, title, round, state, appointmentState, clinicianName },
      firstPlannedAt: first.visitAt.get(visitKey({ code, round }))?.toISOString() ?? null,
      plannedAt: startsAt,
      ...happened(visited.get(id)),
      tracings: (captured.get(id)?.tracings ?? []).map(viewTracing),
      photographs: photographs.filter(({ stageId }) => stageId === id),
    })),
    labSteps: labSteps.map(({ id, code, title, arches, round, afterStage, state, startsAt }) => ({
      ...{ id, title, arches, round, afterStage, state },
      firstPlannedAt: first.stepAt.get(stepKey({ code, arches, round }))?.toISOString() ?? null,
      plannedAt: startsAt,
      ...happened(worked.get(id)),
    })),
    measurements: await measuredOverVisits(tx, stageIds, captured),
  };
}

const happened = (row: Happened | undefined) => ({
  startedAt: row?.startedAt?.toISOString() ?? null,
  finishedAt: row?.finishedAt?.toISOString() ?? null,
});

async function visitsOf(tx: EntityManager, stageIds: readonly string[]): Promise<Map<string, Happened>> {
  const rows: Happened[] = await tx.query(
    `SELECT s.stage_id AS id, a.started_at AS "startedAt", a.finished_at AS "finishedAt"
     FROM appointment_stage s JOIN appointment a ON a.id = s.appointment_id
     WHERE s.stage_id = ANY ($1::uuid[]) AND a.state IN ('in-progress', 'completed') ORDER BY a.starts_at, a.id`,
    [stageIds],
  );
  return new Map(rows.map((row) => [row.id, row]));
}

async function stepsOf(tx: EntityManager, caseId: string): Promise<Map<string, Happened>> {
  const rows: Happened[] = await tx.query(
    `SELECT id, started_at AS "startedAt", finished_at AS "finishedAt" FROM lab_step WHERE case_id = $1`,
    [caseId],
  );
  return new Map(rows.map((row) => [row.id, row]));
}
