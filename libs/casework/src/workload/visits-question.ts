import type { PracticeSnapshot, WorkloadRequest } from '@archwright/protocol';
import type { Laboratory } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import type { CaseToRepair } from '../disturbances/search-repair.js';
import { loadJointCase, loadJointPractice } from '../planning/joint-practice.js';
import { movableFrom } from '../planning/notice-limit.js';
import type { ReplanBasis } from '../planning/replan-basis.js';
import type { ResourceTimes } from '../planning/snapshot-changes.js';
import { loadWorkload, type LoadedWorkload } from './load-workload.js';

const WEEK_MS = 168 * 3_600_000;
/** Cases of each sort that take part: the latest ones, and those whose free visits come first. Project default. */
const MOST_CASES = 20;

/** Cases whose free visits are chosen again, in a practice where only what stays is taken. Plain values, for a thread. */
export interface VisitsQuestion {
  /** Their laboratory work between visits as they are now. */
  readonly request: WorkloadRequest;
  readonly practice: PracticeSnapshot;
  readonly cases: readonly CaseToRepair[];
  /** What every case holds that could move. */
  readonly held: ReadonlyMap<string, ResourceTimes>;
}

export interface LoadedVisits {
  readonly workload: LoadedWorkload;
  readonly bases: readonly ReplanBasis[];
  readonly question: VisitsQuestion;
}

/**
 * Late cases of a laboratory, and cases with visits that are free still: kept provisionally, and not within the notice.
 * Booked visits stay.
 *
 * @param late ids of cases whose work will be late, the latest first
 * @returns null when no visit is free
 */
export async function loadVisitsQuestion(
  tx: EntityManager,
  actor: Actor,
  laboratory: Laboratory,
  late: readonly string[],
  now: Date,
): Promise<LoadedVisits | null> {
  const from = movableFrom(now);
  const free = await casesWithFreeVisits(tx, laboratory.id, from, now);
  if (free.length === 0) return null;
  const caseIds = [...new Set([...late.slice(0, MOST_CASES), ...free])];
  const { weeks, clinicIds } = await reachOf(tx, caseIds, now);
  const workload = await loadWorkload(tx, laboratory, weeks, now, caseIds);
  const { horizonWeeks } = workload.request;
  const scope = { clinicIds, horizonWeeks, movableFrom: from, movable: 'provisional' as const };
  const joint = await loadJointPractice(tx, scope, now);
  const bases: ReplanBasis[] = [];
  for (const { id } of workload.cases) {
    bases.push(await loadJointCase(tx, actor, { caseId: id, wanted: null }, joint, now));
  }
  const cases = bases.map((basis) => ({ caseId: basis.treatmentCase.id, ...inItsLaboratories(basis) }));
  return {
    workload,
    bases,
    question: { request: workload.request, practice: joint.practice, cases, held: joint.held },
  };
}

async function casesWithFreeVisits(tx: EntityManager, laboratoryId: string, from: Date, now: Date): Promise<string[]> {
  const rows: { id: string }[] = await tx.query(
    `SELECT c.id FROM treatment_case c JOIN stage s ON s.case_id = c.id
       JOIN appointment_stage x ON x.stage_id = s.id JOIN appointment a ON a.id = x.appointment_id
       JOIN hold h ON h.id = a.hold_id
     WHERE c.state = 'open' AND a.state = 'provisional' AND a.starts_at >= $2
       AND h.kind = 'provisional' AND h.state = 'active' AND h.expires_at > $3
       AND EXISTS (SELECT FROM lab_step l WHERE l.case_id = c.id AND l.laboratory_id = $1 AND l.state IN ('planned', 'ready'))
     GROUP BY c.organisation_id, c.id ORDER BY min(a.starts_at), c.id LIMIT $4`,
    [laboratoryId, from, now, MOST_CASES],
  );
  return rows.map(({ id }) => id);
}

/** How far ahead the visits of some cases lie, and where they may be. */
async function reachOf(
  tx: EntityManager,
  caseIds: readonly string[],
  now: Date,
): Promise<{ weeks: number; clinicIds: string[] }> {
  const [row]: { last: Date | null; clinicIds: string[] }[] = await tx.query(
    `SELECT max(a.ends_at) AS last, array_agg(DISTINCT k.id) AS "clinicIds"
     FROM treatment_case c CROSS JOIN LATERAL unnest(c.clinic_ids) AS k(id)
       JOIN stage s ON s.case_id = c.id JOIN appointment_stage x ON x.stage_id = s.id
       JOIN appointment a ON a.id = x.appointment_id AND a.state IN ('booked', 'provisional')
     WHERE c.id = ANY ($1::uuid[])`,
    [caseIds],
  );
  const lastMs = row?.last?.getTime() ?? now.getTime();
  return { weeks: Math.max(1, Math.ceil((lastMs - now.getTime()) / WEEK_MS)), clinicIds: row?.clinicIds ?? [] };
}

/** Work stays in the laboratories where it is planned: sending it elsewhere is another proposal. */
function inItsLaboratories({ search: { request, booked, plannedSteps } }: ReplanBasis): Omit<CaseToRepair, 'caseId'> {
  const own = [...new Set([...plannedSteps, ...request.fixedSteps].map(({ laboratoryId }) => laboratoryId))];
  const laboratoryIds = own.length > 0 ? own : request.wishes.laboratoryIds;
  return { request: { ...request, wishes: { ...request.wishes, laboratoryIds } }, booked, plannedSteps };
}
