import fc from 'fast-check';
import { planOffers } from '@archwright/planner';
import { combineArches } from '../combine.js';
import { conventional } from '../paths/conventional.js';
import { immediate } from '../paths/immediate.js';
import { repair } from '../paths/repair.js';
import { PlanningAxis } from './axis.js';
import { betweenBlocks, leavingFor, timeTaken } from './home-visits.js';
import { faultsOf } from './plan-checker.builder.js';
import { fromChainPlan, type CasePlan } from './plan.js';
import { toChainProblem } from './problem.js';
import type { PlanRequest } from './request.js';
import { aClinic, aPractice, aRequest } from './small-practice.builder.js';

const ZONE = 'Europe/Berlin';
const NOW = Date.parse('2026-04-07T06:00:00Z');
const AXIS = new PlanningAxis(NOW, 1);

function atHome(request: PlanRequest, homeTravelMinutes = 25): PlanRequest {
  return { ...request, patient: { ...request.patient, homeTravelMinutes } };
}

function planOf(request: PlanRequest): CasePlan {
  const { problem, names } = toChainProblem(request);
  const [offer] = planOffers(problem, 1).offers;
  if (offer === undefined) throw new Error('no plan found');
  return fromChainPlan(offer, names);
}

describe('visits at home', () => {
  it('are planned with the way there and back in working hours, without a chair, every wait held', () => {
    const request = atHome(aRequest(combineArches({ upper: conventional, lower: conventional }), ZONE, NOW));
    const plan = planOf(request);
    expect(faultsOf(plan, conventional, request, ZONE)).toEqual([]);
    expect(plan.visits.map(({ chairId, homeTravelMinutes }) => [chairId, homeTravelMinutes])).toEqual(
      plan.visits.map(() => ['', 25]),
    );
    const atClinic = planOf({ ...request, patient: { ...request.patient, homeTravelMinutes: null } });
    const minutes = ({ visits }: CasePlan) => visits.map(({ startMs, endMs }) => endMs - startMs);
    expect(minutes(plan)).toEqual(minutes(atClinic));
  });

  it('leave nobody time between two visits that lie closer than the way', () => {
    const chain = combineArches({ upper: repair });
    const free = planOf(aRequest(chain, ZONE, NOW));
    const [first] = free.visits;
    if (first === undefined) throw new Error('a first visit is planned');
    const clinic = aClinic(ZONE);
    const busy = [{ startMs: first.endMs, endMs: first.endMs + 20 * 60_000 }];
    const clinicians = clinic.clinicians.map((each) => ({ ...each, busy }));
    const practice = aPractice(ZONE, { clinics: [{ ...clinic, clinicians }] });
    const request = aRequest(chain, ZONE, NOW, { practice });
    expect(planOf(request).visits[0]?.startMs).toBe(first.startMs);
    const plan = planOf(atHome(request));
    expect(faultsOf(plan, repair, atHome(request), ZONE)).toEqual([]);
    const [visit] = plan.visits;
    expect(visit && timeTaken(visit).startMs).toBeGreaterThanOrEqual(first.endMs + 20 * 60_000);
  });

  it('stay in the clinic where the path says so', () => {
    const request = atHome(aRequest(combineArches({ upper: immediate }), ZONE, NOW, { horizonWeeks: 26 }));
    const plan = planOf(request);
    const places = new Map(plan.visits.map(({ stage, homeTravelMinutes }) => [stage, homeTravelMinutes]));
    const mayTravel = new Map(immediate.visits.map((visit) => [visit.code, visit.mayTravel]));
    expect([...places].every(([stage, way]) => (way !== null) === mayTravel.get(stage))).toBe(true);
    expect(new Set(places.values())).toEqual(new Set([null, 25]));
    expect(faultsOf(plan, immediate, request, ZONE)).toEqual([]);
  });

  it('that are kept keep their time when the rest is planned around them', () => {
    const chain = combineArches({ upper: conventional });
    const request = atHome(aRequest(chain, ZONE, NOW));
    const kept = planOf(request).visits[1];
    if (kept === undefined) throw new Error('a second visit is planned');
    const { startMs, endMs, clinicId, clinicianId, chairId, homeTravelMinutes } = kept;
    const fixed = { code: kept.stage, startMs, endMs, clinicId, clinicianId, chairId, homeTravelMinutes };
    const plan = planOf({ ...request, fixedStages: [fixed] });
    expect(plan.visits[1]).toMatchObject({ startMs, endMs, isKept: true, homeTravelMinutes: 25 });
    expect(faultsOf(plan, conventional, request, ZONE)).toEqual([]);
  });
});

describe('blocks', () => {
  it('are left for by the way before each start that the patient has', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(319)), fc.nat(100), (starts, way) => {
        const bits = new Uint32Array(10);
        for (const slot of starts) bits[slot >>> 5] = ((bits[slot >>> 5] ?? 0) | (1 << (slot & 31))) >>> 0;
        const leaving = leavingFor(bits, way);
        const seen = Array.from({ length: 320 }, (_, slot) => slot).filter(
          (slot) => (((leaving[slot >>> 5] ?? 0) >>> (slot & 31)) & 1) === 1,
        );
        expect(seen).toEqual(
          starts
            .map((slot) => slot - way)
            .filter((slot) => slot >= 0)
            .sort((a, b) => a - b),
        );
      }),
      { seed: 20270104 },
    );
  });

  it('wait as long as their visits have to, and for ever where those do', () => {
    const lo = Int32Array.from([10, 11, 12, 13, 14, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20]);
    const shifted = betweenBlocks(AXIS, { lo, hi: null }, { after: 2, before: 3 });
    expect([...(shifted.lo ?? [])].slice(0, 8)).toEqual([7, 7, 7, 8, 9, 10, 11, 20]);
    expect(betweenBlocks(AXIS, { lo, hi: null }, { after: 0, before: 0 }).lo).toBe(lo);
  });
});
