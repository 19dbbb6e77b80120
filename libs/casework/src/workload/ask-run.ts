import type { AskWorkload, WorkloadRunView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { WorkloadRun, enqueueOutbox, recordAudit, uuidv7 } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { requireLaboratory } from '../lab/bench-steps.js';
import { viewRun } from './run-view.js';

/** Independent streams of each search: a parameter, so that the same seed finds the same on every machine. */
const STREAMS = 2;

/** @throws {WrongStateError} while another search of the laboratory is under way */
export async function askForWorkload(
  tx: EntityManager,
  actor: Actor,
  { laboratoryId, weeks, seconds, seed }: AskWorkload,
  now: Date,
): Promise<WorkloadRunView> {
  await requireLaboratory(tx, actor, laboratoryId);
  // Waits for whoever asks at the same moment; the index refuses a second one all the same.
  await tx.query('SELECT FROM laboratory WHERE id = $1 FOR UPDATE', [laboratoryId]);
  if (await tx.existsBy(WorkloadRun, { laboratoryId, state: In(['asked', 'running']) })) {
    throw new WrongStateError('A search of this laboratory', 'under way', 'one that has ended, or cancel it first');
  }
  const id = uuidv7();
  const asked = { askedAt: now, askedBy: actor.userId };
  await tx.insert(WorkloadRun, { id, laboratoryId, weeks, seconds, seed, streams: STREAMS, state: 'asked', ...asked });
  await enqueueOutbox(tx, 'search-workload', { organisationId: actor.organisationId, runId: id }, now);
  await audit(tx, actor, 'search-workload', id, now);
  return viewRun(tx, actor, id);
}

/** Ends a search. What it had found is dropped with it; the plan in force was never touched. */
export async function cancelWorkload(
  tx: EntityManager,
  actor: Actor,
  runId: string,
  version: number,
  now: Date,
): Promise<WorkloadRunView> {
  const run = await tx.findOne(WorkloadRun, { where: { id: runId }, lock: { mode: 'pessimistic_write' } });
  if (run === null) throw new RecordNotFoundError('search', runId);
  await requireLaboratory(tx, actor, run.laboratoryId);
  requireVersion(version, run.version);
  if (run.state !== 'asked' && run.state !== 'running') {
    throw new WrongStateError('The search', run.state, 'one that is under way');
  }
  const ended = { state: 'cancelled' as const, finishedAt: now, doing: null };
  await tx.update(WorkloadRun, { id: runId }, { ...ended, version: run.version + 1 });
  await audit(tx, actor, 'cancel-workload-search', runId, now);
  return viewRun(tx, actor, runId);
}

function audit(tx: EntityManager, { userId }: Actor, action: string, runId: string, at: Date): Promise<unknown> {
  const subject = { subjectKind: 'workload-run', subjectId: runId, details: {} };
  return recordAudit(tx, { actorId: userId, action, ...subject, at });
}
