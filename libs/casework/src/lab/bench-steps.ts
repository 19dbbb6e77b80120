import type { LabStepState } from '@archwright/contracts';
import { Laboratory, type PlannedSegment } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';

/** A step that has its place in time, with what its bench must know. No patient: cases have numbers. */
export interface BenchStep {
  readonly id: string;
  readonly version: number;
  readonly caseId: string;
  readonly caseNumber: string;
  readonly code: string;
  readonly round: number;
  readonly arches: ('upper' | 'lower')[];
  readonly phase: string;
  readonly afterStage: string;
  readonly beforeStage: string;
  readonly laboratoryId: string;
  readonly workCentreId: string;
  readonly workCentre: string;
  readonly placeLabel: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly segments: readonly PlannedSegment[];
  readonly state: LabStepState;
  /** When it must leave the laboratory: with the courier, else for the visit itself; null while that visit is not booked. */
  readonly leavesBy: Date | null;
  /** When it is due in the clinic. */
  readonly dueBackAt: Date | null;
}

/** The laboratory's unfinished work, and whatever else of it stands between two instants. Earliest first. */
export function loadBenchSteps(
  tx: EntityManager,
  laboratoryId: string,
  { from, until }: { readonly from: Date; readonly until: Date },
): Promise<BenchStep[]> {
  return tx.query(
    `${SELECTED} WHERE s.laboratory_id = $1 AND s.hold_id IS NULL AND (
       s.state IN ('planned', 'ready', 'started', 'paused')
       OR s.state = 'finished' AND s.starts_at < $3 AND s.ends_at > $2) ${IN_ORDER}`,
    [laboratoryId, from, until],
  );
}

/** All planned work of a case, finished included. */
export function loadCaseSteps(tx: EntityManager, caseId: string): Promise<BenchStep[]> {
  return tx.query(
    `${SELECTED} WHERE s.case_id = $1 AND s.starts_at IS NOT NULL AND s.laboratory_id IS NOT NULL ${IN_ORDER}`,
    [caseId],
  );
}

const IN_ORDER = 'ORDER BY s.starts_at, s.id';

const SELECTED = `
  SELECT s.id, s.version, s.case_id AS "caseId", c.number AS "caseNumber", s.code, s.round, s.arches, s.phase,
    s.after_stage AS "afterStage", s.before_stage AS "beforeStage", s.laboratory_id AS "laboratoryId",
    s.work_centre_id AS "workCentreId", w.name AS "workCentre", coalesce(p.label, '') AS "placeLabel",
    s.starts_at AS "startsAt", s.ends_at AS "endsAt", s.segments, s.state,
    coalesce(l.departs_at, v.starts_at) AS "leavesBy", coalesce(l.arrives_at, v.starts_at) AS "dueBackAt"
  FROM lab_step s
  JOIN treatment_case c ON c.id = s.case_id
  JOIN work_centre w ON w.id = s.work_centre_id
  LEFT JOIN batch b ON b.id = s.batch_id
  LEFT JOIN bench_place p ON p.id = coalesce(s.place_id, b.place_id)
  LEFT JOIN LATERAL (
    SELECT a.starts_at FROM stage g
      JOIN appointment_stage x ON x.stage_id = g.id JOIN appointment a ON a.id = x.appointment_id
    WHERE g.case_id = s.case_id AND g.code = s.before_stage AND g.state NOT IN ('repeated', 'dropped')
      AND a.state IN ('booked', 'provisional')
    ORDER BY g.round DESC, a.starts_at LIMIT 1) v ON true
  LEFT JOIN LATERAL (
    SELECT t.departs_at, t.arrives_at FROM courier_leg t
    WHERE t.case_id = s.case_id AND t.direction = 'to-clinic' AND t.before_stage = s.before_stage
      AND t.state <> 'cancelled' AND t.hold_id IS NULL AND t.arrives_at <= v.starts_at
    ORDER BY t.departs_at DESC LIMIT 1) l ON true`;

/**
 * A laboratory that the actor may look into: its own people, and those who manage the practice.
 *
 * @throws {RecordNotFoundError} for any other
 */
export async function requireLaboratory(tx: EntityManager, actor: Actor, laboratoryId: string): Promise<Laboratory> {
  const seesAll = actor.role === 'manager' || actor.role === 'administrator';
  const laboratory =
    seesAll || actor.laboratoryIds.includes(laboratoryId) ? await tx.findOneBy(Laboratory, { id: laboratoryId }) : null;
  if (laboratory === null) throw new RecordNotFoundError('laboratory', laboratoryId);
  return laboratory;
}

/** Minutes in which someone works on it. */
export function handsOnMinutes({ segments }: Pick<BenchStep, 'segments'>): number {
  const spans = segments
    .filter(({ kind }) => kind === 'hands-on')
    .map(({ startsAt, endsAt }) => Date.parse(endsAt) - Date.parse(startsAt));
  return Math.round(spans.reduce((sum, ms) => sum + ms, 0) / 60_000);
}

/** Whether the bench has it still to begin, or to go on with. */
export const isToBegin = ({ state }: Pick<BenchStep, 'state'>): boolean =>
  state === 'planned' || state === 'ready' || state === 'paused';
