import type { StageView } from '@archwright/contracts';
import { Prescription, UserAccount } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { StageRecord } from './stage-record.js';

/** The hand-over in force after a stage: unsigned while none is, null when no laboratory work follows. */
export async function viewHandOver(
  tx: EntityManager,
  { chain, stage }: Pick<StageRecord, 'chain' | 'stage'>,
): Promise<StageView['prescription']> {
  if (!chain.phases.some(({ afterStage }) => afterStage === stage.code)) return null;
  const order = await tx.findOneBy(Prescription, { stageId: stage.id, supersededAt: IsNull() });
  if (order === null) return { signedAt: null, signedBy: null };
  const person = await tx.findOneBy(UserAccount, { id: order.signedBy });
  return { signedAt: order.signedAt.toISOString(), signedBy: person?.name ?? null };
}
