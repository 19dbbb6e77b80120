import type { LabMaterial } from '@archwright/contracts';
import { openGates } from '@archwright/protocol';
import { loadUnfitInputs } from '../custody/unfit-input.js';
import { LabQuestion, Prescription, Stage, TreatmentCase, type LabStep } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import { loadEvidence } from '../capture/gate-evidence.js';
import { pausedParts } from '../capture/paused-parts.js';
import { loadChain, type LoadedChain } from '../cases/chain.js';
import { materialsToAvoid } from '../patients/caution-words.js';

type Step = Pick<LabStep, 'id' | 'code' | 'arches' | 'round' | 'state' | 'afterStage'>;

/** What the laboratory is told about one case's steps. */
export interface StepKnowledge {
  titleOf(code: string): string;
  /** Why the step may not begin yet, null when it may. */
  waitsFor(step: Step): string | null;
  /** What the patient is allergic to, of what a laboratory handles. */
  readonly avoidMaterials: LabMaterial[];
}

/** Reads a case once, for all its steps. */
export async function knowSteps(tx: EntityManager, caseId: string, now: Date): Promise<StepKnowledge> {
  const loaded = await loadChain(tx, caseId);
  const treatmentCase = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const signed = await signedStages(tx, caseId);
  const paused = await pausedParts(tx, caseId);
  const asked = new Set((await tx.findBy(LabQuestion, { caseId, answeredAt: IsNull() })).map((each) => each.labStepId));
  const evidence = await loadEvidence(tx, { treatmentCase, ...loaded }, now);
  const unfitInput = await loadUnfitInputs(tx, caseId, loaded, now);
  const { chain } = loaded;
  const titleOf = (code: string) => [...chain.steps, ...chain.stages].find((part) => part.code === code)?.title ?? code;
  const avoidMaterials = await materialsToAvoid(tx, treatmentCase.patientId);
  return {
    titleOf,
    avoidMaterials,
    waitsFor(step) {
      if (asked.has(step.id)) return "The clinician's answer";
      const lateFinding = paused.get(step.code);
      if (lateFinding !== undefined) return `The clinician's decision on a late finding: ${lateFinding}`;
      const before = unfinishedBefore(loaded, step);
      if (before !== null) return `"${titleOf(before)}" to be finished`;
      const unfit = isBegun(step) ? null : unfitInput(step);
      if (unfit !== null) return unfit;
      if (step.state !== 'planned') return null;
      if (!signed.has(step.afterStage)) return `The signed work order of "${titleOf(step.afterStage)}"`;
      const [open] = openGates(chain, { kind: 'lab-step', code: step.code }, evidence);
      return open === undefined ? null : (open.missing[0] ?? open.gate.code);
    },
  };
}

/** What has begun is in somebody's hands already. */
const isBegun = ({ state }: Step): boolean => state === 'started' || state === 'paused' || state === 'finished';

async function signedStages(tx: EntityManager, caseId: string): Promise<Set<string>> {
  const orders = await tx.findBy(Prescription, { caseId, supersededAt: IsNull() });
  const stages = await tx.findBy(Stage, { caseId });
  const signed = stages.filter(({ id, state }) => state !== 'repeated' && orders.some(({ stageId }) => stageId === id));
  return new Set(signed.map(({ code }) => code));
}

/** The first step that the path wants finished before, for an arch that both are made for. */
function unfinishedBefore({ chain, rows }: LoadedChain, step: Step): string | null {
  const before = chain.steps.find(({ code }) => code === step.code)?.after ?? [];
  for (const { code } of before) {
    const goes = rows.steps.filter(
      (row) =>
        row.code === code &&
        row.state !== 'discarded' &&
        row.state !== 'rejected' &&
        row.arches.some((arch) => step.arches.includes(arch)),
    );
    const latest = Math.max(...goes.map(({ round }) => round));
    if (goes.some(({ round, state }) => round === latest && state !== 'finished')) return code;
  }
  return null;
}
