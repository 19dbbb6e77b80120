import { WorkloadSearch, planOffers, workloadFaults, type WorkloadAim } from '@archwright/planner';
import { combineArches } from '../combine.js';
import { conventional } from '../paths/conventional.js';
import { startProgress } from '../progress.js';
import type { FixedStage, PracticeSnapshot } from '../snapshot.js';
import { fromChainPlan, type CasePlan } from './plan.js';
import { toChainProblem } from './problem.js';
import { aLaboratory, aPractice, aRequest } from './small-practice.builder.js';
import { outlookOf } from './work-outlook.js';
import { movedWork } from './workload-plan.js';
import type { CaseWork, WorkloadRequest } from './workload-request.js';
import { toWorkload } from './workload.js';

const ZONE = 'Europe/Berlin';
const NOW = Date.parse('2026-04-07T06:00:00Z');
const chain = combineArches({ upper: conventional });
/** Every work centre has a single place, so that cases meet. */
const laboratory = aLaboratory(ZONE);
const narrow = {
  ...laboratory,
  workCentres: laboratory.workCentres.map((centre) => ({ ...centre, places: centre.places.slice(0, 1) })),
};
const practice = aPractice(ZONE, { laboratories: [narrow] });
/** Ways to and from another laboratory besides. */
const couriers = practice.couriers.flatMap((each) => [each, { ...each, id: 'other-way', laboratoryId: 'other' }]);

/** As the chain search plans it in an empty practice. */
function planned(): CasePlan {
  const { problem, names } = toChainProblem(aRequest(chain, ZONE, NOW, { practice }));
  const [offer] = planOffers(problem, 1).offers;
  if (offer === undefined) throw new Error('no plan found');
  return fromChainPlan(offer, names);
}

function asWork(caseId: string, plan: CasePlan): CaseWork {
  return {
    caseId,
    chain,
    progress: startProgress(chain),
    fixedStages: plan.visits.map(({ stage, startMs, endMs, clinicId, clinicianId, chairId }): FixedStage => ({
      code: stage,
      startMs,
      endMs,
      clinicId,
      clinicianId,
      chairId,
      homeTravelMinutes: null,
    })),
    fixedSteps: [],
    movable: plan.labSteps.map(({ code, startMs, placeId, holds }) => ({ code, startMs, placeId, holds, run: null })),
    clinicIds: ['clinic'],
  };
}

function request(cases: readonly CaseWork[], change: Partial<WorkloadRequest> = {}): WorkloadRequest {
  return {
    laboratoryId: narrow.id,
    otherLaboratoryIds: [],
    practice: change.practice ?? (practice satisfies PracticeSnapshot),
    cases,
    machines: [],
    overtime: [],
    nowMs: NOW,
    horizonWeeks: 10,
    zone: ZONE,
    ...change,
  };
}

function search(asked: WorkloadRequest, epochs: number, aim: WorkloadAim = 'fewest-moves') {
  const { problem, names } = toWorkload(asked);
  const found = new WorkloadSearch(problem, { seed: 1, streams: 2, aim });
  for (let epoch = 0; epoch < epochs; epoch++) found.runEpoch();
  return { problem, names, found };
}

describe('the work of many cases', () => {
  const plan = planned();

  it('finds nothing to move where one case stands as it was planned', () => {
    const { problem, names, found } = search(request([asWork('one', plan)]), 1);
    expect(problem.jobs.length).toBeGreaterThan(2);
    expect(found.inForce.objective).toMatchObject({ violations: 0, lateness: 0, disruption: 0 });
    expect(found.isProved).toBe(true);
    expect(workloadFaults(problem, found.best)).toEqual([]);
    expect(movedWork(found.best, problem, names)).toEqual([]);
    expect(outlookOf(found.best, problem, found.bound, names).every(({ lateMinutes }) => lateMinutes === 0)).toBe(true);
  });

  it('moves one of two cases that stand at the same places, within what their visits leave', () => {
    const { problem, names, found } = search(request([asWork('one', plan), asWork('two', plan)]), 6);
    expect(workloadFaults(problem, found.best)).toEqual([]);
    expect(found.best.objective.violations).toBe(0);
    expect(found.best.objective.lateness).toBeLessThanOrEqual(found.inForce.objective.lateness);
    const moved = movedWork(found.best, problem, names);
    expect(moved.length).toBeGreaterThan(0);
    for (const { steps, transports } of moved) {
      expect(transports.map(({ direction }) => direction)).toEqual(['to-clinic']);
      for (const { holds, placeId } of steps) expect(holds.length > 0).toBe(placeId !== null);
    }
  });

  it('leaves work in its place that the laboratory can not make any more as a whole', () => {
    const without = narrow.workCentres.filter(({ code }) => code !== 'wax');
    const lost = {
      ...practice,
      couriers,
      laboratories: [
        { ...narrow, workCentres: without },
        { ...narrow, id: 'other' },
      ],
    };
    const { problem, names } = toWorkload(request([asWork('one', plan)], { practice: lost }));
    const codes = names.jobs.flatMap(({ alternatives: [here] }) => here?.steps ?? []);
    expect(codes).toContain('trays');
    expect(codes).not.toContain('record-bases');
    const bases = plan.labSteps.find(({ code }) => code === 'record-bases');
    const place = problem.centres.flatMap(({ places }) => places).find(({ key }) => key === bases?.placeId);
    const slot = names.axis.slotFrom(bases?.holds[0]?.startMs ?? 0);
    expect(((place?.free[slot >> 5] ?? 0) >>> (slot & 31)) & 1).toBe(0);
  });

  it('keeps a bench open for longer where overtime is allowed', () => {
    const overtime = [{ workCentreId: 'centre-tooth-set-up', minutes: 120 }];
    const openSlots = (asked: WorkloadRequest) => {
      const centre = toWorkload(asked).problem.centres.find(({ key }) => key === 'centre-tooth-set-up');
      return [...(centre?.open ?? [])].reduce((sum, word) => sum + word.toString(2).replaceAll('0', '').length, 0);
    };
    const asked = request([asWork('one', plan)]);
    // Ten weeks of five working days, of which the laboratory keeps its holidays.
    const more = openSlots({ ...asked, overtime }) - openSlots(asked);
    expect(more % 24).toBe(0);
    expect(more / 24).toBeGreaterThan(40);
  });

  it('works no overtime into what is closed', () => {
    const key = 'centre-tooth-set-up';
    const asked = request([asWork('one', plan)], { overtime: [{ workCentreId: key, minutes: 120 }] });
    const openOf = (each: WorkloadRequest) =>
      toWorkload(each).problem.centres.find((centre) => centre.key === key)?.open ?? new Uint32Array();
    const { axis } = toWorkload(asked).names;
    const isOpen = (open: Uint32Array, slot: number) => ((open[slot >> 5] ?? 0) >>> (slot & 31)) & 1;
    const before = openOf({ ...asked, overtime: [] });
    // The last open slot of the second day that is worked on, and the hour behind it.
    const ends = [...Array(axis.count).keys()].filter(
      (slot) => isOpen(before, slot) === 1 && isOpen(before, slot + 1) === 0,
    );
    const from = (ends[3] ?? 0) - 5;
    const closure = { startMs: axis.msOf(from), endMs: axis.msOf(from + 18) };
    const workCentres = narrow.workCentres.map((each) => (each.id === key ? { ...each, closures: [closure] } : each));
    const closed = { ...practice, laboratories: [{ ...narrow, workCentres }] };
    const open = openOf({ ...asked, practice: closed });
    for (let slot = from; slot < from + 18; slot++) expect([slot, isOpen(open, slot)]).toEqual([slot, 0]);
    expect([from - 1, from + 18].map((slot) => isOpen(open, slot))).toEqual([1, 1]);
  });

  it('counts the units of work that stays in a run, whether or not it could have moved', () => {
    const baked = plan.labSteps.find(({ code }) => chain.steps.find((step) => step.code === code)?.batch != null);
    if (baked?.placeId == null) throw new Error('the path shares no machine');
    const { code, placeId, startMs, endMs, workCentreId } = baked;
    const run = { id: 'run', units: 2 };
    const inRun = (work: CaseWork): CaseWork => ({
      ...work,
      movable: work.movable.map((step) => (step.code === code ? { ...step, run } : step)),
    });
    // Its visits are gone, so that nothing says until when its work is wanted: it stays.
    const staying = { ...inRun(asWork('two', plan)), fixedStages: [] };
    const batch = { id: 'run', placeId, kind: 'curing-cycle' as const, startMs, endMs };
    const runsOf = (cases: readonly CaseWork[], hasOthers: boolean, freeUnits: number) =>
      toWorkload(
        request(cases, { machines: [{ workCentreId, runSize: 6, runs: [{ ...batch, freeUnits, hasOthers }] }] }),
      ).problem.centres.find(({ key }) => key === workCentreId)?.openRuns;
    expect(runsOf([inRun(asWork('one', plan)), staying], true, 3)).toMatchObject([{ key: 'run', freeUnits: 1 }]);
    expect(runsOf([inRun(asWork('one', plan)), staying], false, 6)).toMatchObject([{ key: 'run', freeUnits: 4 }]);
    expect(runsOf([inRun(asWork('one', plan))], false, 6)).toEqual([]);
  });

  it('sends work to another laboratory only while its visit before is to come', () => {
    const other = {
      ...narrow,
      id: 'other',
      workCentres: narrow.workCentres.map((each) => ({ ...each, id: `o-${each.id}` })),
    };
    const both = { ...practice, laboratories: [narrow, other], couriers };
    const asked = request([asWork('one', plan)], { practice: both, otherLaboratoryIds: ['other'] });
    expect(toWorkload(asked).names.jobs.map(({ alternatives }) => alternatives.length)).toEqual(
      toWorkload(asked).names.jobs.map(() => 2),
    );
    const later = { ...asked, nowMs: plan.visits[0]?.endMs ?? 0 };
    expect(toWorkload(later).names.jobs[0]?.alternatives).toHaveLength(1);
  });
});
