import type { RepairDisturbancePayload } from '@archwright/contracts';
import { Disturbance, DisturbanceProposal, inOrganisation, readInOrganisation, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { serviceActor, type Actor } from '../actor.js';
import { rippleView } from '../booking/ripple-view.js';
import { hashOf } from '../planning/canonical.js';
import type { ReplanBasis } from '../planning/replan-basis.js';
import type { PlanningMeans } from '../planning/searches.js';
import { NO_CHANGE, storePlan } from '../planning/stored-plan.js';
import { isUndecided } from './disturbance-record.js';
import { askForRepairs } from './enter-disturbance.js';
import { loadNeighbours, loadQuestion, toSearch, type RepairQuestion } from './repair-question.js';
import type { JointRepair, RepairsFound } from './search-repair.js';
import { labelOf, whyNone } from './words.js';

/** Cases that are asked to make room for those that fit nowhere. Project default. */
const MOST_NEIGHBOURS = 8;
/** Said in the history of each case; why something fell away is the practice's own business. */
export const FELL_AWAY = 'Time or work that the plan rested on fell away';

/**
 * Looks for plans that repair everything that a disturbance breaks and keeps them as proposals; nothing moves until a
 * person accepts one. Other cases are read in only when an affected one fits nowhere. Safe to run again.
 *
 * The search holds no lock; what changed meanwhile is found out by the versions when it is kept.
 */
export async function proposeRepairs(
  { db, searches }: PlanningMeans,
  { organisationId, disturbanceId }: RepairDisturbancePayload,
  now: Date,
): Promise<void> {
  const actor = serviceActor(organisationId);
  const read = <Result>(work: (tx: EntityManager) => Promise<Result>) => readInOrganisation(db, organisationId, work);
  const asked = await read((tx) => loadQuestion(tx, actor, disturbanceId, now));
  if (asked === null) return;
  let found = await searches.repair(toSearch(asked, []));
  let neighbours: ReplanBasis[] = [];
  const inTheWay = [...new Set(found.left.flatMap((each) => each.inTheWay))].slice(0, MOST_NEIGHBOURS);
  if (inTheWay.length > 0) {
    neighbours = await read((tx) => loadNeighbours(tx, actor, asked, inTheWay, now));
    found = await searches.repair(toSearch(asked, neighbours));
  }
  const bases = [...asked.broken, ...neighbours];
  await inOrganisation(db, organisationId, async (tx) => {
    const row = await tx.findOne(Disturbance, { where: { id: disturbanceId }, lock: { mode: 'pessimistic_write' } });
    if (row === null || !isUndecided(row)) return;
    if (!(await areCurrent(tx, found, bases))) {
      await askForRepairs(tx, disturbanceId, organisationId, now);
      return;
    }
    await tx.update(DisturbanceProposal, { disturbanceId, state: 'open' }, { state: 'superseded' });
    const repairs = found.repairs.filter(({ parts }) => parts.length > 0 || found.left.length === 0);
    for (const repair of repairs) await keepProposal(tx, actor, { row, asked, bases, repair, left: found.left }, now);
    const state = repairs.length > 0 ? ('planned' as const) : ('open' as const);
    const noProposalReason = repairs.length > 0 ? null : whyNone(found.left);
    await tx.update(Disturbance, { id: disturbanceId }, { state, noProposalReason, version: row.version + 1 });
  });
}

/** Whether every case that would change is as it was when it was read. */
async function areCurrent(
  tx: EntityManager,
  { repairs }: RepairsFound,
  bases: readonly ReplanBasis[],
): Promise<boolean> {
  const changing = new Set(repairs.flatMap(({ parts }) => parts.map(({ caseId }) => caseId)));
  const rows: { id: string; version: number }[] = await tx.query(
    'SELECT id, version FROM treatment_case WHERE id = ANY ($1::uuid[])',
    [[...changing]],
  );
  return rows.every(({ id, version }) =>
    bases.some(({ treatmentCase }) => treatmentCase.id === id && treatmentCase.version === version),
  );
}

interface ToKeep {
  readonly row: Disturbance;
  readonly asked: RepairQuestion;
  readonly bases: readonly ReplanBasis[];
  readonly repair: JointRepair;
  readonly left: RepairsFound['left'];
}

async function keepProposal(tx: EntityManager, actor: Actor, given: ToKeep, now: Date): Promise<void> {
  const { row, asked, bases, repair, left } = given;
  const affected = new Set(asked.broken.map(({ treatmentCase }) => treatmentCase.id));
  const otherCases = repair.parts.filter(({ caseId }) => !affected.has(caseId)).length;
  const label = labelOf(repair, otherCases);
  const ripples = [];
  for (const { caseId, found } of repair.parts) {
    const basis = bases.find(({ treatmentCase }) => treatmentCase.id === caseId);
    if (basis === undefined) throw new Error(`A repair plans case ${caseId}, which was not asked about`);
    const change = { ...NO_CHANGE, reason: FELL_AWAY };
    const stored = await storePlan(tx, actor, basis, { kind: 'proposal', label, found, change }, now);
    ripples.push(await rippleView(tx, basis, stored, now));
  }
  await tx.insert(DisturbanceProposal, {
    id: uuidv7(),
    disturbanceId: row.id,
    planHash: hashOf({ disturbance: row.id, parts: ripples.map(({ planHash }) => planHash) }),
    label,
    rung: repair.rung,
    movedVisits: repair.movedVisits,
    leastMovedVisits: Math.min(repair.leastMovedVisits, repair.movedVisits),
    otherCases,
    leftCaseIds: left.map(({ caseId }) => caseId),
    ripples,
    state: 'open',
    createdAt: now,
  });
}
