import { FindingPause } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** Stages and lab steps of a case that wait for an answer to a late finding: neither may begin. Reasons by code. */
export async function pausedParts(tx: EntityManager, caseId: string): Promise<ReadonlyMap<string, string>> {
  const open = await tx.findBy(FindingPause, { caseId, state: 'open' });
  return new Map(open.map(({ pointOfNoReturn, reason }) => [pointOfNoReturn, reason]));
}
