import type { LateWork, ShownProposal, WorkloadQuery, WorkloadRunView, WorkloadView } from '@archwright/contracts';
import { WorkloadProposal, WorkloadRun } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { requireLaboratory } from '../lab/bench-steps.js';

/** In the order in which a coordinator would try them. */
const KINDS: readonly WorkloadProposal['kind'][] = [
  'within-slack',
  'level-load',
  'free-visits',
  'overtime',
  'other-laboratory',
];

/** The latest search of a laboratory. */
export async function viewWorkload(
  tx: EntityManager,
  actor: Actor,
  { laboratoryId }: WorkloadQuery,
): Promise<WorkloadView> {
  await requireLaboratory(tx, actor, laboratoryId);
  const run = await tx.findOne(WorkloadRun, { where: { laboratoryId }, order: { askedAt: 'DESC', id: 'DESC' } });
  return { run: run === null ? null : await toView(tx, run) };
}

/** @throws {RecordNotFoundError} for a run of a laboratory that is not the actor's */
export async function viewRun(tx: EntityManager, actor: Actor, runId: string): Promise<WorkloadRunView> {
  const run = await tx.findOneBy(WorkloadRun, { id: runId });
  if (run === null) throw new RecordNotFoundError('search', runId);
  await requireLaboratory(tx, actor, run.laboratoryId);
  return toView(tx, run);
}

async function toView(tx: EntityManager, run: WorkloadRun): Promise<WorkloadRunView> {
  const proposals = await tx.findBy(WorkloadProposal, { runId: run.id });
  const { id, version, laboratoryId, state, askedAt, seed, weeks, epochs } = run;
  return {
    id,
    version,
    laboratoryId,
    state,
    sentence: sentenceOf(run, proposals),
    askedAt: askedAt.toISOString(),
    seed,
    weeks,
    epochs,
    // Written by `runWorkload` alone.
    late: (run.before as { late: LateWork[] } | null)?.late ?? [],
    proposals: proposals
      .sort((one, other) => KINDS.indexOf(one.kind) - KINDS.indexOf(other.kind))
      .map((proposal) => ({
        ...(proposal.shown as ShownProposal),
        id: proposal.id,
        version: proposal.version,
        kind: proposal.kind,
        state: proposal.state,
      })),
  };
}

const DOING: Readonly<Record<WorkloadProposal['kind'], string>> = {
  'within-slack': 'Moving work within its slack',
  'level-load': 'Levelling the load',
  'free-visits': 'Choosing free visits again',
  overtime: 'Trying overtime',
  'other-laboratory': 'Trying another laboratory',
};

function sentenceOf({ state, doing, epochs, failure }: WorkloadRun, proposals: readonly WorkloadProposal[]): string {
  switch (state) {
    case 'asked':
      return 'The search begins in a moment. Nothing planned changes.';
    case 'running': {
      const what = DOING[doing as WorkloadProposal['kind']];
      return `${what}, round ${String(epochs)}. Nothing planned changes.`;
    }
    case 'cancelled':
      return 'The search was cancelled. Nothing planned was changed.';
    case 'failed':
      return failure ?? '';
    case 'finished':
      return finishedIn(proposals);
  }
}

function finishedIn(proposals: readonly WorkloadProposal[]): string {
  if (proposals.some((proposal) => proposal.state === 'accepted'))
    return 'A proposal was accepted; the work has moved.';
  if (proposals.length === 0) return 'No better plan was found than the one in force.';
  const count = proposals.length === 1 ? '1 proposal' : `${String(proposals.length)} proposals`;
  return `${count}. Nothing moves until you accept one.`;
}
