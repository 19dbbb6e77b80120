import type { CaseChain, CaseProgress } from '@archwright/protocol';
import { Stage, TreatmentCase } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadChain, loadChains, type LoadedChain } from '../cases/chain.js';
import { RecordNotFoundError } from '../errors.js';

export type ChainStage = CaseChain['stages'][number];

/** One go at a stage, with the case and the chain that it belongs to. */
export interface StageRecord {
  readonly stage: Stage;
  readonly treatmentCase: TreatmentCase;
  readonly chain: CaseChain;
  readonly progress: CaseProgress;
  readonly rows: LoadedChain['rows'];
  /** What the pinned path says of this stage. */
  readonly part: ChainStage;
}

/**
 * A stage that the actor may see.
 *
 * @param lock true: nobody else changes this stage until the transaction ends
 * @throws {RecordNotFoundError} for an unknown stage and for one outside the actor's clinics
 */
export async function loadStage(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { lock = false }: { lock?: boolean } = {},
): Promise<StageRecord> {
  const seen = await tx.findOneBy(Stage, { id: stageId });
  if (seen === null) throw new RecordNotFoundError('stage', stageId);
  // The case first, as everything that changes it does.
  if (lock) await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [seen.caseId]);
  const stage = lock
    ? await tx.findOneOrFail(Stage, { where: { id: stageId }, lock: { mode: 'pessimistic_write' } })
    : seen;
  const treatmentCase = await tx.findOneByOrFail(TreatmentCase, { id: stage.caseId });
  if (!mayTreat(actor, treatmentCase)) throw new RecordNotFoundError('stage', stageId);
  const { chain, progress, rows } = await loadChain(tx, stage.caseId);
  return { stage, treatmentCase, chain, progress, rows, part: partOf(chain, stage.code) };
}

/** Stages of the day, in as many queries as for one; those that the actor may not see are left out. */
export async function loadStages(
  tx: EntityManager,
  actor: Actor,
  stageIds: readonly string[],
): Promise<Map<string, StageRecord>> {
  const stages = await tx.findBy(Stage, { id: In([...stageIds]) });
  const caseIds = stages.map(({ caseId }) => caseId);
  const cases = await tx.findBy(TreatmentCase, { id: In([...new Set(caseIds)]) });
  const seen = new Map(cases.filter((each) => mayTreat(actor, each)).map((each) => [each.id, each]));
  const chains = await loadChains(tx, [...seen.keys()]);
  const records = stages.flatMap((stage): StageRecord[] => {
    const treatmentCase = seen.get(stage.caseId);
    const loaded = chains.get(stage.caseId);
    if (treatmentCase === undefined || loaded === undefined) return [];
    return [{ stage, treatmentCase, ...loaded, part: partOf(loaded.chain, stage.code) }];
  });
  return new Map(records.map((record) => [record.stage.id, record]));
}

/** Whether one of the case's clinics is the actor's; the laboratory has no business in the chair. */
function mayTreat(actor: Actor, { clinicIds }: Pick<TreatmentCase, 'clinicIds'>): boolean {
  if (actor.role === 'administrator' || actor.role === 'service') return true;
  return actor.role !== 'lab' && clinicIds.some((clinic) => actor.clinicIds.includes(clinic));
}

/** The stage of that code in the pinned path; a row without one means that the path was changed underneath it. */
function partOf(chain: CaseChain, code: string): ChainStage {
  const part = chain.stages.find((each) => each.code === code);
  if (part === undefined) throw new Error(`The case's path has no stage "${code}".`);
  return part;
}

/** Raises the version of a stage together with a change of it. */
export async function changeStage(
  tx: EntityManager,
  stage: Stage,
  change: Partial<Omit<Stage, 'id' | 'organisationId' | 'version'>>,
): Promise<void> {
  await tx.update(Stage, { id: stage.id }, { ...change, version: stage.version + 1 });
}
