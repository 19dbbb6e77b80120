import type { CaseChain } from '@archwright/protocol';
import { LabStep, Stage, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** Writes the stages and laboratory steps of a chain as waiting rows; `existing` are stages that the case has already. */
export async function layOut(
  tx: EntityManager,
  caseId: string,
  chain: CaseChain,
  existing: readonly Pick<Stage, 'code'>[] = [],
): Promise<void> {
  const had = new Set(existing.map(({ code }) => code));
  const stages = chain.stages.filter(({ code }) => !had.has(code));
  await tx.insert(
    Stage,
    stages.map((stage) => stageRow(caseId, stage)),
  );
  if (chain.steps.length === 0) return;
  await tx.insert(
    LabStep,
    chain.steps.map(({ code, arches, phase, afterStage, beforeStage }) => ({
      id: uuidv7(),
      caseId,
      code,
      arches: [...arches],
      phase,
      afterStage,
      beforeStage,
      segments: [],
      state: 'unplanned' as const,
    })),
  );
}

/** An enquiry has its first visit only: the rest follows when the treatment is decided. */
export async function layOutFirstStage(tx: EntityManager, caseId: string, { stages }: CaseChain): Promise<void> {
  await tx.insert(
    Stage,
    stages.slice(0, 1).map((stage) => stageRow(caseId, stage)),
  );
}

function stageRow(caseId: string, { code, position, arches }: CaseChain['stages'][number]) {
  return { id: uuidv7(), caseId, code, position, arches: [...arches], state: 'waiting' as const };
}
