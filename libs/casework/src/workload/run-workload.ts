import type { SearchWorkloadPayload } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import {
  Laboratory,
  WorkloadProposal,
  WorkloadRun,
  inOrganisation,
  readInOrganisation,
  uuidv7,
} from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { serviceActor } from '../actor.js';
import { hashOf } from '../planning/canonical.js';
import type { PlanningMeans } from '../planning/searches.js';
import { loadWorkload, type LoadedWorkload } from './load-workload.js';
import { loadNames } from './names.js';
import { isBetter, showProposal, type StayingKind } from './proposals.js';
import { RunWatch } from './run-watch.js';
import type { WorkloadFound, WorkloadQuestion } from './search-workload.js';
import { lateWorkOf } from './standing.js';
import { isWorthCalls, keepVisits, type VisitsFinding } from './visits-proposal.js';
import { loadVisitsQuestion } from './visits-question.js';

/** How much longer a bench stays open where overtime is tried: common practice, no source. */
const OVERTIME_MINUTES = 120;

/** Nobody at a bench can do anything about an error of ours; it is thrown on, so that the log has it. */
const BROKE_DOWN = 'The search broke down, and nothing planned was changed. The log of the service says why.';

/** What is searched first, and said to be under way from the moment a run begins. */
const FIRST: StayingKind = 'within-slack';

/** What a search may change, and what it is good for. */
interface Variant {
  readonly kind: StayingKind;
  readonly question: Pick<WorkloadQuestion, 'request' | 'aim'>;
}

/**
 * Searches for better plans of a laboratory's work, one kind of change after the other, and keeps those that are better
 * as proposals. Nothing planned is touched. Safe to run again: a run that has ended is left alone, one that was killed
 * begins anew and finds the same epoch by epoch.
 */
export async function runWorkload(
  means: Omit<PlanningMeans, 'signal'>,
  { organisationId, runId }: SearchWorkloadPayload,
  clock: { now(): Date },
): Promise<void> {
  const { db } = means;
  const begun = await inOrganisation(db, organisationId, (tx) => begin(tx, runId, clock.now()));
  if (begun === null) return;
  const watch = new RunWatch(db, organisationId, runId);
  try {
    const found = await searchAll(means, begun.run, begun.workload, watch);
    const visits = await searchFreeVisits(means, begun.run, { found, nowMs: begun.workload.request.nowMs }, watch);
    await watch.settled();
    await inOrganisation(db, organisationId, (tx) => keep(tx, begun, { found, visits }, clock.now()));
  } catch (error) {
    await watch.settled();
    if (watch.signal.aborted) return;
    // Threads that close are the service's end: the job is done again by the next one.
    if (error instanceof DomainError && error.code === 'jobs.threads-closed') throw error;
    const failure = error instanceof DomainError ? error.message : BROKE_DOWN;
    await inOrganisation(db, organisationId, (tx) => fail(tx, runId, failure, clock.now()));
    if (!(error instanceof DomainError)) throw error;
  }
}

async function begin(tx: EntityManager, runId: string, now: Date): Promise<Begun | null> {
  const run = await tx.findOne(WorkloadRun, { where: { id: runId }, lock: { mode: 'pessimistic_write' } });
  if (run === null || (run.state !== 'asked' && run.state !== 'running')) return null;
  const laboratory = await tx.findOneByOrFail(Laboratory, { id: run.laboratoryId });
  const workload = await loadWorkload(tx, laboratory, run.weeks, now);
  await tx.update(
    WorkloadRun,
    { id: runId },
    {
      ...{ state: 'running', doing: FIRST, epochs: 0 },
      instanceHash: hashOf(workload.request),
    },
  );
  return { run, workload };
}

type Finds = Map<StayingKind, WorkloadFound>;

async function searchAll(
  { searches }: Pick<PlanningMeans, 'searches'>,
  { seconds, seed, streams }: WorkloadRun,
  { request }: LoadedWorkload,
  watch: RunWatch,
): Promise<Finds> {
  const found: Finds = new Map();
  const search = async ({ kind, question }: Variant, share: number): Promise<void> => {
    if (!(await watch.begin(kind))) watch.signal.throwIfAborted();
    const until = { milliseconds: Math.round(1000 * seconds * share) };
    found.set(kind, await searches.workload({ ...question, seed, streams, until }, watch.signal, watch.tell));
  };
  const here = { ...request, otherLaboratoryIds: [] };
  await search({ kind: FIRST, question: { request: here, aim: 'fewest-moves' } }, 0.25);
  await search({ kind: 'level-load', question: { request: here, aim: 'level-load' } }, 0.25);
  const late = found.get('within-slack')?.best.outlook.filter(({ lateMinutes }) => lateMinutes > 0) ?? [];
  if (late.length === 0) return found;
  const overtime = [...new Set(late.flatMap(({ longestWait }) => longestWait?.workCentreId ?? []))];
  if (overtime.length > 0) {
    const longer = overtime.map((workCentreId) => ({ workCentreId, minutes: OVERTIME_MINUTES }));
    const question = { request: { ...here, overtime: longer }, aim: 'fewest-moves' as const };
    await search({ kind: 'overtime', question }, 0.15);
  }
  if (request.otherLaboratoryIds.length > 0) {
    await search({ kind: 'other-laboratory', question: { request, aim: 'fewest-moves' } }, 0.15);
  }
  return found;
}

/**
 * Where something is late or a day overfull in the best plan that leaves every visit in its place, visits that are free
 * still are chosen again. Null where there is nothing to gain, or none is free.
 */
async function searchFreeVisits(
  { db, searches }: Pick<PlanningMeans, 'db' | 'searches'>,
  { organisationId, laboratoryId, seconds, seed, streams }: WorkloadRun,
  { found, nowMs }: { readonly found: Finds; readonly nowMs: number },
  watch: RunWatch,
): Promise<VisitsFinding | null> {
  const [withinSlack, levelled] = [found.get('within-slack'), found.get('level-load')];
  if (withinSlack === undefined || levelled === undefined) return null;
  const isLate = withinSlack.best.outlook.some(({ lateMinutes }) => lateMinutes > 0);
  if (!isLate && levelled.best.objective.overload === 0) return null;
  const late = withinSlack.inForce.outlook
    .filter(({ lateMinutes }) => lateMinutes > 0)
    .sort((one, other) => other.lateMinutes - one.lateMinutes)
    .map(({ caseId }) => caseId);
  const loaded = await readInOrganisation(db, organisationId, async (tx) => {
    const laboratory = await tx.findOneByOrFail(Laboratory, { id: laboratoryId });
    return loadVisitsQuestion(tx, serviceActor(organisationId), laboratory, late, new Date(nowMs));
  });
  if (loaded === null || loaded.question.cases.length === 0) return null;
  if (!(await watch.begin('free-visits'))) watch.signal.throwIfAborted();
  const aim = isLate ? ('fewest-moves' as const) : ('level-load' as const);
  const until = { milliseconds: Math.round(1000 * seconds * 0.2) };
  const search = { question: loaded.question, aim, seed, streams, until };
  return { loaded, found: await searches.visits(search, watch.signal, watch.tell), withinSlack, levelled };
}

interface Begun {
  readonly run: WorkloadRun;
  readonly workload: LoadedWorkload;
}

/** Keeps what is better than the plan in force; help from outside has to be better than moving work within its slack. */
async function keep(
  tx: EntityManager,
  { run: { id: runId }, workload }: Begun,
  { found, visits }: { readonly found: Finds; readonly visits: VisitsFinding | null },
  now: Date,
): Promise<void> {
  const run = await tx.findOneOrFail(WorkloadRun, { where: { id: runId }, lock: { mode: 'pessimistic_write' } });
  if (run.state !== 'running') return;
  const names = await loadNames(tx, workload);
  const withinSlack = found.get('within-slack');
  for (const [kind, each] of found) {
    const than = kind === 'overtime' || kind === 'other-laboratory' ? withinSlack?.best.objective : undefined;
    if (!isBetter(kind, each, workload, than)) continue;
    const { seed, streams, epochs, best, bound, verdict, gapPercent } = each;
    await tx.insert(WorkloadProposal, {
      id: uuidv7(),
      runId,
      kind,
      moves: { moved: best.moved, basedOn: basisOf(workload, each) },
      shown: showProposal(kind, each, workload, names),
      seed,
      streams,
      epochs,
      objective: best.objective,
      bound: { ...bound, verdict, gapPercent },
      state: 'open',
    });
  }
  if (visits !== null && isWorthCalls(visits)) await keepVisits(tx, run, visits, now);
  const before = withinSlack === undefined ? [] : lateWorkOf(withinSlack.inForce, names);
  const ended = { state: 'finished' as const, finishedAt: now, doing: null, version: run.version + 1 };
  await tx.update(WorkloadRun, { id: runId }, { ...ended, before: { late: before } });
}

/** Versions of what a plan moves, and of the cases it belongs to. */
function basisOf({ cases, steps }: LoadedWorkload, { best }: WorkloadFound) {
  const caseIds = new Set(best.moved.map(({ caseId }) => caseId));
  return {
    cases: cases.filter(({ id }) => caseIds.has(id)).map(({ id, version }) => ({ id, version })),
    steps: best.moved.flatMap(({ caseId, steps: moved }) =>
      moved.flatMap(({ code, round }) =>
        steps
          .filter((step) => step.caseId === caseId && step.code === code && step.round === round)
          .map(({ id, version }) => ({ id, version })),
      ),
    ),
  };
}

async function fail(tx: EntityManager, runId: string, failure: string, now: Date): Promise<void> {
  const ended = { state: 'failed' as const, failure, finishedAt: now, doing: null };
  await tx.update(WorkloadRun, { id: runId, state: 'running' }, { ...ended, version: () => 'version + 1' });
}
