import { DomainError } from '@archwright/kernel';
import type { CasePlan } from '@archwright/protocol';
import { Plan, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { hashOf } from './canonical.js';
import type { PlanningBasis } from './planning-basis.js';
import type { FoundPlan } from './search.js';

/** Changes with whatever may make the same snapshot give another plan. */
const CODE_VERSION = '1';

/** What a plan does besides placing visits: visits that it takes away, and why. */
export interface PlanChange {
  readonly cancelledAppointmentIds: readonly string[];
  /** Stages that are no longer planned for, with the laboratory work that leads to them. */
  readonly droppedStages: readonly string[];
  readonly reason: string | null;
}

/** What is kept of a plan: enough to show it and to book exactly it. */
export interface PlanDocument {
  readonly plan: CasePlan;
  readonly change: PlanChange;
}

export interface StoredPlan extends PlanDocument {
  readonly id: string;
  readonly caseId: string;
  readonly planHash: string;
  /** Version of the case that the plan was computed from. */
  readonly caseVersion: number;
}

/** The case changed after the plan was computed, or another plan was meant. */
export class PlanStaleError extends DomainError {
  constructor(sentence: string) {
    super('casework.plan-conflict', `${sentence} Nothing was changed. Ask for new plans and choose again.`);
  }
}

export interface NewPlan {
  readonly kind: Plan['kind'];
  readonly label: string;
  readonly found: FoundPlan;
  readonly change: PlanChange;
}

export const NO_CHANGE: PlanChange = { cancelledAppointmentIds: [], droppedStages: [], reason: null };

/** Hash of what would be booked: equal hashes book the same times on the same resources. */
export function planHashOf(caseId: string, { plan, change }: PlanDocument): string {
  const { visits, labSteps, transports } = plan;
  return hashOf({ caseId, visits, labSteps, transports, change: { ...change, reason: null } });
}

/** Keeps a plan with what it takes to compute it again; the search for one case draws nothing at random. */
export async function storePlan(
  tx: EntityManager,
  actor: Actor,
  { treatmentCase, request }: Pick<PlanningBasis, 'treatmentCase' | 'request'>,
  { kind, label, found, change }: NewPlan,
  now: Date,
): Promise<StoredPlan> {
  const id = uuidv7();
  const document: PlanDocument = { plan: found.plan, change };
  const caseId = treatmentCase.id;
  const planHash = planHashOf(caseId, document);
  await tx.insert(Plan, {
    id,
    caseId,
    kind,
    label,
    document,
    planHash,
    instanceHash: hashOf(request),
    basedOn: { caseVersion: treatmentCase.version },
    codeVersion: CODE_VERSION,
    seed: 0,
    streams: 1,
    epochs: 0,
    objective: found.objective,
    bound: null,
    createdAt: now,
    createdBy: actor.userId,
  });
  return { id, caseId, planHash, caseVersion: treatmentCase.version, ...document };
}

/** @throws {RecordNotFoundError} when there is no such plan of one of these kinds */
export async function loadPlan(tx: EntityManager, planId: string, kinds: readonly Plan['kind'][]): Promise<StoredPlan> {
  const row = await tx.findOneBy(Plan, { id: planId });
  if (row === null || !kinds.includes(row.kind)) throw new RecordNotFoundError('plan', planId);
  // Written by `storePlan` alone.
  const document = row.document as PlanDocument;
  const { caseVersion } = row.basedOn as { caseVersion: number };
  return { id: row.id, caseId: row.caseId, planHash: row.planHash, caseVersion, ...document };
}

/** @throws {PlanStaleError} when the case is not as it was when the plan was computed */
export function requireCurrent({ caseVersion }: StoredPlan, current: number): void {
  if (caseVersion !== current) throw new PlanStaleError('The case was changed since this plan was computed.');
}

/** @throws {PlanStaleError} when another plan is meant than the stored one */
export function requireHash({ planHash }: Pick<StoredPlan, 'planHash'>, seen: string): void {
  if (planHash !== seen) throw new PlanStaleError('This is not the plan that you were shown.');
}
