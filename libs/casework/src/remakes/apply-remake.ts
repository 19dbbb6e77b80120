import type { CaseChain, CaseProgress } from '@archwright/protocol';
import { LabStep, Stage, leaveBatches, release, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { chainOf, loadPaths, type LoadedChain } from '../cases/chain.js';
import type { Remake } from './remake.js';

/**
 * Sends a case back in the records: goes that no longer count, goes to come in their place, and rounds of healing before
 * them. What is booked is left to the plan that follows.
 */
export async function applyRemake(
  tx: EntityManager,
  caseId: string,
  { chain, rows }: Pick<LoadedChain, 'chain' | 'rows'>,
  remake: Remake,
): Promise<void> {
  await writeStages(tx, caseId, { chain, rows }, remake.progress.stages);
  await writeSteps(tx, caseId, { chain, rows }, remake.progress.steps);
  if (remake.heals) await addHealing(tx, caseId, rows, remake.arches);
}

type Rows = Pick<LoadedChain, 'chain' | 'rows'>;

async function writeStages(
  tx: EntityManager,
  caseId: string,
  { chain, rows }: Rows,
  goes: CaseProgress['stages'],
): Promise<void> {
  for (const { code, round, arches, state } of goes) {
    const row = rows.stages.find((each) => each.code === code && each.round === round);
    if (row === undefined) {
      const position = chain.stages.find((stage) => stage.code === code)?.position ?? 0;
      await tx.insert(Stage, { id: uuidv7(), caseId, code, position, round, arches: [...arches], state });
    } else if (row.state !== state || row.arches.join() !== arches.join()) {
      await tx.update(Stage, { id: row.id }, { state, arches: [...arches], version: row.version + 1 });
    }
  }
}

async function writeSteps(
  tx: EntityManager,
  caseId: string,
  { chain, rows }: Rows,
  goes: CaseProgress['steps'],
): Promise<void> {
  const given = goes.map((go) => ({
    go,
    row: rows.steps.find((each) => each.code === go.code && each.round === go.round),
  }));
  const discarded = given.flatMap(({ go, row }) =>
    row !== undefined && go.state === 'discarded' && row.state !== 'discarded' ? [row.id] : [],
  );
  if (discarded.length > 0) {
    await leaveBatches(tx, discarded);
    await release(tx, { labStepIds: discarded });
  }
  for (const { go, row } of given) {
    const { code, round, state } = go;
    const arches = [...go.arches];
    if (row === undefined) await insertStep(tx, caseId, chain, { code, round, arches });
    else if (row.state !== state || row.arches.join() !== arches.join()) {
      await tx.update(LabStep, { id: row.id }, { state, arches, version: row.version + 1 });
    }
  }
}

async function insertStep(
  tx: EntityManager,
  caseId: string,
  chain: CaseChain,
  go: Pick<LabStep, 'code' | 'round' | 'arches'>,
): Promise<void> {
  const step = chain.steps.find(({ code }) => code === go.code);
  if (step === undefined) throw new Error(`The case's path has no laboratory step "${go.code}".`);
  const { phase, afterStage, beforeStage } = step;
  const row = {
    id: uuidv7(),
    caseId,
    ...go,
    phase,
    afterStage,
    beforeStage,
    segments: [],
    state: 'unplanned' as const,
  };
  await tx.insert(LabStep, row);
}

/** One more round of healing for the arches; the stages behind it move up by one place. */
async function addHealing(
  tx: EntityManager,
  caseId: string,
  { arches, stages }: LoadedChain['rows'],
  healing: Remake['arches'],
): Promise<void> {
  const rounds = stages.flatMap(({ code }) => /^H(\d+)(?:-|$)/.exec(code)?.[1] ?? []).map(Number);
  const code = `H${String(Math.max(0, ...rounds) + 1)}`;
  const paths = await loadPaths(
    tx,
    arches.map(({ pathVersionId }) => pathVersionId),
  );
  const chain = chainOf(arches, paths, [...stages, { code, round: 1, arches: healing }]);
  const known = await tx.findBy(Stage, { caseId });
  for (const { code: own, position, arches: treated } of chain.stages) {
    const rowsOf = known.filter((row) => row.code === own);
    for (const row of rowsOf.filter((each) => each.position !== position)) {
      await tx.update(Stage, { id: row.id }, { position });
    }
    if (rowsOf.length === 0) {
      await tx.insert(Stage, { id: uuidv7(), caseId, code: own, position, arches: [...treated], state: 'waiting' });
    }
  }
}
