import type { Ripple, ShownProposal } from '@archwright/contracts';
import { WorkloadProposal, uuidv7, type WorkloadRun } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { serviceActor } from '../actor.js';
import { rippleView } from '../booking/ripple-view.js';
import { NO_CHANGE, storePlan } from '../planning/stored-plan.js';
import { loadNames, type Names } from './names.js';
import { changedDays } from './proposals.js';
import type { PlanStanding, WorkloadFound } from './search-workload.js';
import { standingOf } from './standing.js';
import type { VisitsFound } from './search-visits.js';
import type { LoadedVisits } from './visits-question.js';

/** Said in the history of each case. */
const REASON = 'Visits that were free still were chosen again so that laboratory work is not late';

/** What a search for visits was asked, and what it found. */
export interface VisitsFinding {
  readonly loaded: LoadedVisits;
  readonly found: VisitsFound;
  /** The best that leaves every visit where it is. */
  readonly withinSlack: WorkloadFound;
  readonly levelled: WorkloadFound;
}

/**
 * Whether moving visits gains more than what leaves them where they are: first in limits broken and lateness, then in
 * overload. Both speak of what they save, since they count the lateness of different cases.
 */
export function isWorthCalls({ found, withinSlack, levelled }: Omit<VisitsFinding, 'loaded'>): boolean {
  if (found.parts.every(({ movedVisits }) => movedVisits === 0)) return false;
  for (const name of ['violations', 'lateness'] as const) {
    const saved = found.inForce.objective[name] - found.after.objective[name];
    const without = withinSlack.inForce.objective[name] - withinSlack.best.objective[name];
    if (saved !== without) return saved > without;
  }
  const { inForce, after } = found;
  const without = levelled.inForce.objective.overload - levelled.best.objective.overload;
  return inForce.objective.overload - after.objective.overload > without;
}

/** Keeps the plans of all its cases, and what of them the coordinator and whoever calls the patients are shown. */
export async function keepVisits(
  tx: EntityManager,
  run: WorkloadRun,
  finding: VisitsFinding,
  now: Date,
): Promise<void> {
  const { loaded, found } = finding;
  const actor = serviceActor(run.organisationId);
  const ripples: Ripple[] = [];
  for (const { caseId, found: plan } of found.parts) {
    const basis = loaded.bases.find(({ treatmentCase }) => treatmentCase.id === caseId);
    if (basis === undefined) throw new Error(`A proposal plans case ${caseId}, which was not asked about`);
    const change = { ...NO_CHANGE, reason: REASON };
    const stored = await storePlan(
      tx,
      actor,
      basis,
      { kind: 'proposal', label: 'Free visits', found: plan, change },
      now,
    );
    ripples.push(await rippleView(tx, basis, stored, now));
  }
  const { seed, streams, epochs, after } = found;
  const movedVisits = movedOf(found);
  await tx.insert(WorkloadProposal, {
    ...{ id: uuidv7(), runId: run.id, kind: 'free-visits', state: 'open', seed, streams, epochs },
    moves: { ripples },
    shown: show(finding, ripples, await loadNames(tx, loaded.workload)),
    objective: { ...after.objective, movedVisits },
    bound: { lateness: found.sureLateness, movedVisits: leastMoved(finding) },
  });
}

const movedOf = ({ parts }: VisitsFound): number => parts.reduce((sum, { movedVisits }) => sum + movedVisits, 0);

/** Some visit has to move for less lateness than any plan has that leaves them all; else nothing is known. */
function leastMoved({ found, withinSlack }: VisitsFinding): number {
  const { inForce, after } = found;
  const most = withinSlack.inForce.objective.lateness - withinSlack.bound.lateness;
  return inForce.objective.lateness - after.objective.lateness > most ? 1 : 0;
}

function show(finding: VisitsFinding, ripples: readonly Ripple[], names: Names): ShownProposal {
  const { loaded, found, withinSlack } = finding;
  const staying = lateElsewhere(finding);
  const before = standingOf(withOutlook(found.inForce, staying));
  const after = standingOf(withOutlook(found.after, staying));
  const visits = ripples.flatMap(({ caseId, visits: changes }) =>
    changes.flatMap(({ caseNumber, title, clinicName, zone, before: fromAt, after: toAt }) =>
      fromAt === null || toAt === null ? [] : [{ caseId, caseNumber, title, clinicName, zone, fromAt, toAt }],
    ),
  );
  const moves = found.parts.flatMap(({ caseId, found: { plan } }) =>
    plan.labSteps.flatMap((step) => {
      const now = loaded.workload.steps.find((row) => row.caseId === caseId && row.code === step.code)?.startsAt;
      if (step.isKept || now == null || now.getTime() === step.startMs) return [];
      const { title, startMs } = step;
      return [
        {
          ...{ caseId, caseNumber: names.caseNumber(caseId), title, workCentre: names.workCentre(step.workCentreId) },
          ...{ laboratory: null, fromAt: now.toISOString(), toAt: new Date(startMs).toISOString() },
        },
      ];
    }),
  );
  const calls = ripples.filter((ripple) => ripple.calls.length > 0).length;
  const untouched = ripples.reduce((sum, ripple) => sum + ripple.untouchedVisits, 0);
  return {
    title: 'Choose free visits again',
    sentence: sentenceOf({ visits: visits.length, calls, steps: moves.length, untouched }, before, after),
    certainty: certaintyOf(finding),
    ...{ before, after, visits },
    moves: moves.sort((one, other) => one.toAt.localeCompare(other.toAt)),
    days: changedDays(found.inForce, found.after, names),
    overtime: [],
  };

  /** Late work of cases that take no part: it stays. */
  function lateElsewhere({ loaded: { workload } }: VisitsFinding): PlanStanding['outlook'] {
    const known = new Set(workload.cases.map(({ id }) => id));
    return withinSlack.inForce.outlook.filter(({ caseId }) => !known.has(caseId));
  }
}

const withOutlook = (standing: PlanStanding, others: PlanStanding['outlook']): PlanStanding => ({
  ...standing,
  outlook: [...standing.outlook, ...others],
});

interface Counts {
  readonly visits: number;
  readonly calls: number;
  readonly steps: number;
  readonly untouched: number;
}

function sentenceOf(
  { visits, calls, steps, untouched }: Counts,
  before: ShownProposal['before'],
  after: ShownProposal['after'],
): string {
  const moves =
    `${counted(visits, 'visit moves', 'visits move')} (${counted(calls, 'patient', 'patients')} to be told), ` +
    `${counted(steps, 'step moves', 'steps move')}; ${counted(untouched, 'other visit', 'other visits')} of these cases stay.`;
  const late = `${String(before.lateCases)} to ${String(after.lateCases)}`;
  const full = `${String(before.fullDays)} to ${String(after.fullDays)}`;
  return `${moves} Late cases: ${late}. Full days at a work centre: ${full}.`;
}

const counted = (count: number, one: string, many: string): string => `${String(count)} ${count === 1 ? one : many}`;

/** The bounds of plans that leave the visits where they are do not hold here; said is what does. */
function certaintyOf(finding: VisitsFinding): string {
  const { found } = finding;
  const isLeast = found.after.objective.lateness === found.sureLateness;
  const late = isLeast
    ? 'Proved: no other choice of these free visits is less late.'
    : 'The bound is weak here: with other free visits less might be late.';
  const moved =
    leastMoved(finding) === 1
      ? 'At least one visit has to move for that; that no fewer would do is not proved.'
      : 'That no fewer visits would do is not proved.';
  return `${late} ${moved}`;
}
