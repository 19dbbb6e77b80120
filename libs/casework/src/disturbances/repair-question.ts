import { TreatmentCase } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadChains } from '../cases/chain.js';
import { loadJointCase, loadJointPractice, type JointPractice } from '../planning/joint-practice.js';
import { movableFrom } from '../planning/notice-limit.js';
import { horizonWeeksOf } from '../planning/planning-basis.js';
import type { ReplanBasis } from '../planning/replan-basis.js';
import { findAffected, type AffectedCase } from './affected.js';
import { isUndecided, loadDisturbance } from './disturbance-record.js';
import { practiceAfter, type Loss } from './loss.js';
import type { CaseToRepair, RepairSearch } from './search-repair.js';

const SLOT_MS = 300_000;

/** What a repair is looked for in: the practice as it will be, and the cases that the loss falls on. */
export interface RepairQuestion {
  readonly loss: Loss;
  readonly joint: JointPractice;
  /** The one that the loss reaches first leading. */
  readonly broken: readonly ReplanBasis[];
}

/** Null once it is decided. */
export async function loadQuestion(
  tx: EntityManager,
  actor: Actor,
  disturbanceId: string,
  now: Date,
): Promise<RepairQuestion | null> {
  const { row, loss } = await loadDisturbance(tx, actor, disturbanceId);
  if (!isUndecided(row)) return null;
  const affected = await findAffected(tx, loss, now);
  const ids = affected.map(({ caseId }) => caseId);
  const cases = await tx.findBy(TreatmentCase, { id: In(ids) });
  const chains = await loadChains(tx, ids);
  const scope = {
    clinicIds: [...new Set(cases.flatMap(({ clinicIds }) => clinicIds))],
    horizonWeeks: Math.max(1, ...[...chains.values()].map(({ chain }) => horizonWeeksOf(chain))),
    // Visits that the loss falls on move all the same.
    movableFrom: movableFrom(now),
    movingAppointmentIds: affected.flatMap(({ appointmentIds }) => appointmentIds),
  };
  const before = await loadJointPractice(tx, scope, now);
  const joint = { ...before, practice: practiceAfter(before.practice, loss) };
  const broken: ReplanBasis[] = [];
  for (const each of affected) {
    const wanted = loss.what === 'visit' ? await stageOf(tx, loss.id, each) : null;
    broken.push(await loadJointCase(tx, actor, { caseId: each.caseId, wanted }, joint, now));
  }
  return { loss, joint, broken };
}

/** The stage of a lost visit, which has to be planned again even if the visit was missed. */
async function stageOf(tx: EntityManager, appointmentId: string, { caseId }: AffectedCase): Promise<string | null> {
  const [stage]: { code: string }[] = await tx.query(
    `SELECT s.code FROM stage s JOIN appointment_stage x ON x.stage_id = s.id
     WHERE x.appointment_id = $1 AND s.case_id = $2 ORDER BY s.position LIMIT 1`,
    [appointmentId, caseId],
  );
  return stage?.code ?? null;
}

/** Other cases as they would be planned anew in the same practice, the clinics of the affected ones alone. */
export async function loadNeighbours(
  tx: EntityManager,
  actor: Actor,
  { joint }: RepairQuestion,
  caseIds: readonly string[],
  now: Date,
): Promise<ReplanBasis[]> {
  const bases: ReplanBasis[] = [];
  for (const caseId of caseIds) bases.push(await loadJointCase(tx, actor, { caseId, wanted: null }, joint, now));
  return bases;
}

export function toSearch(
  { loss, joint, broken }: Pick<RepairQuestion, 'loss' | 'joint' | 'broken'>,
  neighbours: readonly ReplanBasis[],
): RepairSearch {
  return {
    broken: broken.map((basis) => withLoss(basis, loss)),
    neighbours: neighbours.map((basis) => ({ caseId: basis.treatmentCase.id, ...basis.search })),
    held: joint.held,
  };
}

/** The case as the loss leaves it: its own late work, or its patient's own absence. */
function withLoss({ treatmentCase: { id: caseId }, bookings, search }: ReplanBasis, loss: Loss): CaseToRepair {
  const { request, booked, plannedSteps } = search;
  if (loss.what === 'lab-step' && loss.caseId === caseId) {
    const fixedSteps = [
      ...request.fixedSteps.filter(({ code }) => code !== loss.step.code),
      { ...loss.step, startMs: lateStart(loss, request.nowMs) },
    ];
    const others = plannedSteps.filter(({ code }) => code !== loss.step.code);
    return { caseId, request: { ...request, fixedSteps }, booked, plannedSteps: others };
  }
  if (loss.what === 'visit') {
    const lost = bookings.filter(({ appointment }) => appointment.id === loss.id).map(({ stage }) => stage.code);
    const busy = [...request.patient.busy, { startMs: loss.startMs, endMs: loss.endMs }];
    return {
      caseId,
      request: { ...request, patient: { ...request.patient, busy } },
      booked: booked.filter(({ stage }) => !lost.includes(stage)),
      plannedSteps,
    };
  }
  return { caseId, request, booked, plannedSteps };
}

/** Work that should have begun begins now; the five minutes are the planner's. */
function lateStart({ hasBegun, step }: Extract<Loss, { what: 'lab-step' }>, nowMs: number): number {
  return hasBegun ? step.startMs : Math.max(step.startMs, Math.ceil(nowMs / SLOT_MS) * SLOT_MS);
}
