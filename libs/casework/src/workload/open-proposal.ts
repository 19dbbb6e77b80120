import { requireVersion } from '@archwright/platform';
import { WorkloadProposal, WorkloadRun } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { RecordNotFoundError, WrongStateError } from '../errors.js';

/** A proposal with its run; nobody else decides either until the transaction ends. */
export interface OpenProposal {
  readonly proposal: WorkloadProposal;
  readonly run: WorkloadRun;
}

export async function lockProposal(tx: EntityManager, proposalId: string): Promise<OpenProposal> {
  const seen = await tx.findOneBy(WorkloadProposal, { id: proposalId });
  if (seen === null) throw new RecordNotFoundError('proposal', proposalId);
  const lock = { mode: 'pessimistic_write' as const };
  const run = await tx.findOneOrFail(WorkloadRun, { where: { id: seen.runId }, lock });
  const proposal = await tx.findOneOrFail(WorkloadProposal, { where: { id: proposalId }, lock });
  return { proposal, run };
}

export function requireOpen({ version, state }: WorkloadProposal, seenVersion: number): void {
  requireVersion(seenVersion, version);
  if (state !== 'open') throw new WrongStateError('The proposal', state, 'an open one');
}

/** Of the proposals of a run one is accepted; the others were made for what it has changed. */
export async function noteAccepted(
  tx: EntityManager,
  { proposal: { id, version }, run }: OpenProposal,
  decidedBy: string | null,
  now: Date,
): Promise<void> {
  await tx.update(WorkloadProposal, { runId: run.id, state: 'open' }, { state: 'superseded' });
  const decided = { state: 'accepted' as const, decidedAt: now, decidedBy };
  await tx.update(WorkloadProposal, { id }, { ...decided, version: version + 1 });
  await tx.increment(WorkloadRun, { id: run.id }, 'version', 1);
}
