import type { WorkloadRunView } from '@archwright/contracts';
import type { MovedWork } from '@archwright/protocol';
import { LabStep, appendCaseEvent, claim, leaveBatches, recordAudit } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { serviceActor, type Actor } from '../actor.js';
import { asStale } from '../booking/as-stale.js';
import { stepClaims, type StepToClaim } from '../booking/claims.js';
import { lockCase, type LockedCase } from '../booking/locked-case.js';
import { placeSteps } from '../booking/place-lab-work.js';
import { raiseCaseVersion } from '../booking/settle.js';
import { WrongStateError } from '../errors.js';
import { requireLaboratory } from '../lab/bench-steps.js';
import { PlanStaleError } from '../planning/stored-plan.js';
import { lockProposal, noteAccepted, requireOpen, type OpenProposal } from './open-proposal.js';
import { shareRuns } from './share-runs.js';
import { viewRun } from './run-view.js';
import { replaceWays } from './ways.js';

interface Versioned {
  readonly id: string;
  readonly version: number;
}

/** As `runWorkload` keeps it. */
interface Moves {
  readonly moved: readonly MovedWork[];
  readonly basedOn: { readonly cases: readonly Versioned[]; readonly steps: readonly Versioned[] };
}

/**
 * Moves exactly the work of a proposal, all of it or nothing.
 *
 * @throws {PlanStaleError} when a case or step has changed since, or some of the time has been taken
 */
export async function acceptWorkload(
  tx: EntityManager,
  actor: Actor,
  proposalId: string,
  version: number,
  now: Date,
): Promise<WorkloadRunView> {
  const { proposal, run } = await lockProposal(tx, proposalId);
  await requireLaboratory(tx, actor, run.laboratoryId);
  requireOpen(proposal, version);
  if (proposal.kind === 'free-visits')
    throw new WrongStateError('The proposal', 'one that moves visits', 'one that moves work alone');
  // Written by `runWorkload` alone.
  const { moved, basedOn } = proposal.moves as Moves;
  const locked = await lockCases(tx, actor, basedOn.cases);
  await requireUnmoved(tx, basedOn.steps);
  const steps = await placeAll(tx, locked, moved);
  await leaveBatches(
    tx,
    steps.map(({ labStepId }) => labStepId),
  );
  await asStale(() => takeTime(tx, steps, moved, now));
  for (const work of moved) await replaceWays(tx, lockedOf(locked, work.caseId), work, now);
  await note(tx, actor, { proposal, run }, moved, now);
  return viewRun(tx, actor, run.id);
}

/** In the order of their ids, as everything that locks several cases does. The bench has no clinic: the service locks. */
async function lockCases(tx: EntityManager, actor: Actor, cases: readonly Versioned[]): Promise<LockedCase[]> {
  const locked: LockedCase[] = [];
  for (const { id, version } of [...cases].sort((one, other) => (one.id < other.id ? -1 : 1))) {
    const each = await lockCase(tx, serviceActor(actor.organisationId), id);
    if (each.treatmentCase.version !== version || each.treatmentCase.state !== 'open') {
      throw new PlanStaleError(`Case ${each.treatmentCase.number} was changed since this plan was computed.`);
    }
    locked.push(each);
  }
  return locked;
}

function lockedOf(locked: readonly LockedCase[], caseId: string): LockedCase {
  const found = locked.find(({ treatmentCase }) => treatmentCase.id === caseId);
  if (found === undefined) throw new Error('a proposal names every case that it moves work of');
  return found;
}

async function requireUnmoved(tx: EntityManager, steps: readonly Versioned[]): Promise<void> {
  const rows = await tx.find(LabStep, {
    where: { id: In(steps.map(({ id }) => id)) },
    order: { id: 'ASC' },
    lock: { mode: 'pessimistic_write' },
  });
  for (const { id, version } of steps) {
    const row = rows.find((each) => each.id === id);
    const isToMove = row?.state === 'planned' || row?.state === 'ready';
    if (row?.version !== version || !isToMove) {
      throw new PlanStaleError(`Step "${row?.code ?? id}" was changed since this plan was computed.`);
    }
  }
}

async function placeAll(
  tx: EntityManager,
  locked: readonly LockedCase[],
  moved: readonly MovedWork[],
): Promise<StepToClaim[]> {
  const placed: StepToClaim[] = [];
  for (const { caseId, steps } of moved) placed.push(...(await placeSteps(tx, lockedOf(locked, caseId), steps, null)));
  return placed;
}

/** Steps with a place of their own first, so that runs meet what has moved already. */
async function takeTime(
  tx: EntityManager,
  steps: readonly StepToClaim[],
  moved: readonly MovedWork[],
  now: Date,
): Promise<void> {
  const shared = new Set<unknown>(moved.flatMap((work) => work.steps.filter(({ sharesRun }) => sharesRun)));
  const labStepIds = steps.map(({ labStepId }) => labStepId);
  await claim(tx, stepClaims(steps.filter(({ step }) => !shared.has(step))), now, { labStepIds });
  await shareRuns(
    tx,
    steps.filter(({ step }) => shared.has(step)),
    now,
  );
}

async function note(
  tx: EntityManager,
  { userId }: Actor,
  { proposal, run }: OpenProposal,
  moved: readonly MovedWork[],
  now: Date,
): Promise<void> {
  await noteAccepted(tx, { proposal, run }, userId, now);
  for (const caseId of new Set(moved.map((work) => work.caseId))) {
    const steps = moved.filter((work) => work.caseId === caseId).flatMap((work) => work.steps.map(({ code }) => code));
    await raiseCaseVersion(tx, caseId);
    await appendCaseEvent(tx, { caseId, kind: 'lab-work-moved', body: { steps }, actorId: userId, at: now });
  }
  const subject = { subjectKind: 'workload-proposal', subjectId: proposal.id };
  const details = { kind: proposal.kind, steps: moved.reduce((sum, { steps }) => sum + steps.length, 0) };
  await recordAudit(tx, { actorId: userId, action: 'accept-workload-proposal', ...subject, details, at: now });
}
