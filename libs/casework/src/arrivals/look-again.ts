import { ArrivalCheck } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';

/** Something about the work of these cases has changed: their undecided checks are looked at at the next sweep. */
export async function lookAgain(tx: EntityManager, caseIds: readonly string[], now: Date): Promise<void> {
  if (caseIds.length === 0) return;
  await tx.update(ArrivalCheck, { caseId: In([...caseIds]), state: In(['on-its-way', 'open']) }, { lookAt: now });
}
