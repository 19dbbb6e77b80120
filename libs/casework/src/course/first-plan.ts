import type { Arch } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { PlanDocument } from '../planning/stored-plan.js';

/** When each go at a visit and at a laboratory step was to begin by the first plan that was confirmed and had it. */
export interface FirstPlan {
  readonly visitAt: ReadonlyMap<string, Date>;
  readonly stepAt: ReadonlyMap<string, Date>;
}

interface Go {
  readonly code: string;
  readonly round: number;
}

export const visitKey = ({ code, round }: Go): string => `${code}/${String(round)}`;

export const stepKey = (step: Go & { readonly arches: readonly Arch[] }): string =>
  [visitKey(step), ...[...step.arches].sort()].join('/');

/** What a patient was told first is what they remember; what a later plan added was told then. */
export async function firstPlanOf(tx: EntityManager, caseId: string): Promise<FirstPlan> {
  const confirmed: Pick<PlanDocument, 'plan'>[] = await tx.query(
    `SELECT p.document->'plan' AS plan FROM hold h JOIN plan p ON p.id = h.plan_id
     WHERE h.case_id = $1 AND h.state = 'confirmed' ORDER BY h.created_at DESC, h.id DESC`,
    [caseId],
  );
  // The latest first: what an earlier plan says is written over it.
  const visits = confirmed.flatMap(({ plan }) => plan.visits);
  const steps = confirmed.flatMap(({ plan }) => plan.labSteps);
  return {
    visitAt: new Map(visits.map(({ stage, round, startMs }) => [visitKey({ code: stage, round }), new Date(startMs)])),
    stepAt: new Map(steps.map((step) => [stepKey(step), new Date(step.startMs)])),
  };
}
