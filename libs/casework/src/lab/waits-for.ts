import type { LabMaterial } from '@archwright/contracts';
import { openGates, type GateEvidence } from '@archwright/protocol';
import { FindingPause, LabQuestion, Prescription, TreatmentCase, type LabStep } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import { evidenceOf, loadEvidenceRows } from '../capture/gate-evidence.js';
import { loadChains, type LoadedChain } from '../cases/chain.js';
import { unfitInputs } from '../custody/unfit-input.js';
import { RecordNotFoundError } from '../errors.js';
import { materialsOf } from '../patients/caution-words.js';

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
  const known = (await knowCases(tx, [caseId], now)).get(caseId);
  if (known === undefined) throw new RecordNotFoundError('case', caseId);
  return known;
}

/** Like {@link knowSteps} for many cases in as many queries as for one; a case that follows no path is left out. */
export async function knowCases(
  tx: EntityManager,
  caseIds: readonly string[],
  now: Date,
): Promise<ReadonlyMap<string, StepKnowledge>> {
  const chains = await loadChains(tx, caseIds);
  const cases = await tx.findBy(TreatmentCase, { id: In([...chains.keys()]) });
  const records = cases.flatMap((treatmentCase) => {
    const loaded = chains.get(treatmentCase.id);
    return loaded === undefined ? [] : [{ treatmentCase, ...loaded }];
  });
  const of = { caseId: In([...chains.keys()]) };
  const orders = await tx.findBy(Prescription, { ...of, supersededAt: IsNull() });
  const pauses = await tx.findBy(FindingPause, { ...of, state: 'open' });
  const questions = await tx.findBy(LabQuestion, { ...of, answeredAt: IsNull() });
  const evidence = await loadEvidenceRows(tx, records);
  const avoided = await materialsOf(
    tx,
    cases.map(({ patientId }) => patientId),
  );
  return new Map(
    records.map((record) => {
      const { id, patientId } = record.treatmentCase;
      const ofCase = <Row extends { caseId: string | null }>(rows: readonly Row[]) =>
        rows.filter(({ caseId }) => caseId === id);
      return [
        id,
        knowledgeOf(record, {
          evidence: evidenceOf(record, evidence, now),
          signed: signedStages(record, ofCase(orders)),
          paused: new Map(ofCase(pauses).map(({ pointOfNoReturn, reason }) => [pointOfNoReturn, reason])),
          asked: new Set(ofCase(questions).map(({ labStepId }) => labStepId)),
          unfitInput: unfitInputs(ofCase(evidence.custody), record, now),
          avoidMaterials: avoided.get(patientId) ?? [],
        }),
      ];
    }),
  );
}

interface CaseFacts {
  readonly evidence: GateEvidence;
  /** Codes of stages whose work order is signed. */
  readonly signed: ReadonlySet<string>;
  readonly paused: ReadonlyMap<string, string>;
  /** Ids of steps with a question that is not answered. */
  readonly asked: ReadonlySet<string>;
  readonly unfitInput: (step: Step) => string | null;
  readonly avoidMaterials: LabMaterial[];
}

function knowledgeOf(loaded: LoadedChain, facts: CaseFacts): StepKnowledge {
  const { chain } = loaded;
  const { evidence, signed, paused, asked, unfitInput, avoidMaterials } = facts;
  const titleOf = (code: string) => [...chain.steps, ...chain.stages].find((part) => part.code === code)?.title ?? code;
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

function signedStages({ rows: { stages } }: LoadedChain, orders: readonly Prescription[]): Set<string> {
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
