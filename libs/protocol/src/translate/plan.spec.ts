import { toLocal } from '@archwright/calendar';
import { planOffers } from '@archwright/planner';
import { combineArches } from '../combine.js';
import { applyLoop } from '../loop.js';
import { conventional } from '../paths/conventional.js';
import { digital } from '../paths/digital.js';
import { overdenture } from '../paths/overdenture.js';
import { reline } from '../paths/reline.js';
import { shippedPaths } from '../paths/shipped.js';
import { startProgress } from '../progress.js';
import { faultsOf } from './plan-checker.builder.js';
import { fromChainPlan, type CasePlan } from './plan.js';
import { toChainProblem } from './problem.js';
import type { PlanRequest } from './request.js';
import { aClinic, aLaboratory, aPractice, aRequest } from './small-practice.builder.js';

const ZONE = 'Europe/Berlin';
const NOW = Date.parse('2026-04-07T06:00:00Z');
const both = combineArches({ upper: conventional, lower: conventional });

function plans(request: PlanRequest, count = 1): CasePlan[] {
  const { problem, names } = toChainProblem(request);
  return planOffers(problem, count).offers.map((offer) => fromChainPlan(offer, names));
}

function firstPlan(request: PlanRequest): CasePlan {
  const [plan] = plans(request);
  if (plan === undefined) throw new Error('no plan found');
  return plan;
}

const chairMinutes = (plan: CasePlan) =>
  plan.visits.reduce((sum, each) => sum + (each.endMs - each.startMs) / 60_000, 0);

describe('planning a case', () => {
  it('places every visit and lab step of the conventional path with all waits held', () => {
    const request = aRequest(both, ZONE, NOW);
    const plan = firstPlan(request);
    expect(plan.visits.map((each) => each.stage)).toEqual(['V1', 'V2', 'V3', 'V4', 'V5', 'R1', 'R2']);
    expect(plan.labSteps).toHaveLength(16);
    expect(faultsOf(plan, conventional, request, ZONE)).toEqual([]);
    const delivery = plan.visits.find((each) => each.isDelivery);
    expect(plan.deliveryOn).toBe(new Date(delivery?.startMs ?? 0).toISOString().slice(0, 10));
    expect(
      plan.visits.filter((each) => each.bufferMinutes !== null).every((each) => (each.bufferMinutes ?? -1) >= 0),
    ).toBe(true);
    expect(plan.reasons[0]?.code).toBe('earliest-delivery');
  });

  it.each(shippedPaths.map((path) => [path.code, path] as const))('plans %s with all waits held', (_, path) => {
    const chain = combineArches(path.arches.includes('upper') ? { upper: path } : { lower: path });
    const request = aRequest(chain, ZONE, NOW, { horizonWeeks: 26 });
    const plan = firstPlan(request);
    expect(plan.visits.map((each) => each.stage)).toEqual(
      path.visits.filter((each) => each.chained).map((each) => each.code),
    );
    expect(faultsOf(plan, path, request, ZONE)).toEqual([]);
  });

  it('tells the planner how full the days of each clinician are', () => {
    const clinic = aClinic(ZONE);
    const noonMs = NOW + 28 * 3_600_000;
    const busy = [{ startMs: noonMs, endMs: noonMs + 5 * 3_600_000 }];
    const clinicians = clinic.clinicians.map((each, index) => (index === 0 ? { ...each, busy } : each));
    const practice = aPractice(ZONE, { clinics: [{ ...clinic, clinicians }] });
    const { problem, names } = toChainProblem(aRequest(both, ZONE, NOW, { practice }));
    const morning = names.axis.slotFrom(NOW + 25 * 3_600_000);
    const costs = problem.visits[0]?.options[0]?.clinicians.map(({ placementCost }) => placementCost?.[morning]);
    // Five hours of nine and a visit on top of them, against a visit alone.
    expect(costs).toEqual([expect.any(Number), 0]);
    expect(costs?.[0]).toBeGreaterThan(0);
  });

  it('leaves no scrap of free time where a later start costs nothing else', () => {
    const request = aRequest(both, ZONE, NOW);
    const late = { ...request, patient: { ...request.patient, wishes: { weekdays: [], from: '08:10', to: null } } };
    const { visits, wishesBroken } = firstPlan(late);
    expect(wishesBroken).toBe(0);
    // Ten minutes before it would be too short for anybody; a quarter of an hour is not.
    expect(toLocal(visits[0]?.startMs ?? 0, ZONE).slice(11)).toBe('08:15');
  });

  it.each([
    ['spring', '2026-03-09T07:00:00Z'],
    ['autumn', '2026-10-05T06:00:00Z'],
  ])('holds waits and opening hours across the %s clock change', (_, now) => {
    const request = aRequest(both, ZONE, Date.parse(now));
    const plan = firstPlan(request);
    const change = now.startsWith('2026-03') ? '2026-03-29T01:00:00Z' : '2026-10-25T01:00:00Z';
    expect(plan.visits[0]?.startMs).toBeLessThan(Date.parse(change));
    expect(plan.visits.at(-1)?.startMs).toBeGreaterThan(Date.parse(change));
    expect(faultsOf(plan, conventional, request, ZONE)).toEqual([]);
  });

  it('is judged by a checker that notices a moved visit, a shortened step and a shared chair', () => {
    const request = aRequest(both, ZONE, NOW);
    const plan = firstPlan(request);
    const moved = plan.visits.map((each) =>
      each.stage === 'R1'
        ? { ...each, startMs: each.startMs + 5 * 86_400_000, endMs: each.endMs + 5 * 86_400_000 }
        : each,
    );
    expect(faultsOf({ ...plan, visits: moved }, conventional, request, ZONE).join()).toMatch(
      /placement-to-first-check/,
    );
    const short = plan.labSteps.map((each) =>
      each.code === 'set-up' ? { ...each, endMs: each.endMs - 300_000 } : each,
    );
    expect(faultsOf({ ...plan, labSteps: short }, conventional, request, ZONE)).toContain(
      'set-up does not take its minutes',
    );
    const clinic = aClinic(ZONE);
    const taken = clinic.chairs.map((each) => ({ ...each, busy: plan.visits.slice(0, 1) }));
    const full = { ...request, practice: aPractice(ZONE, { clinics: [{ ...clinic, chairs: taken }] }) };
    expect(faultsOf(plan, conventional, full, ZONE).join()).toMatch(/chair-\d is taken twice/);
  });

  it('takes less chair time for a single arch', () => {
    const single = firstPlan(aRequest(combineArches({ upper: conventional }), ZONE, NOW));
    expect(chairMinutes(single)).toBeLessThan(chairMinutes(firstPlan(aRequest(both, ZONE, NOW))));
  });

  it('plans an upper denture beside a lower overdenture as one chain, with room to heal', () => {
    const chain = combineArches({ upper: conventional, lower: overdenture });
    const plan = firstPlan(aRequest(chain, ZONE, NOW, { horizonWeeks: 26 }));
    const at = (stage: string) => plan.visits.find((each) => each.stage === stage)?.startMs ?? NaN;
    expect(plan.visits.map((each) => each.stage)).toEqual(['V1-O1', 'O2', 'V2', 'V3', 'V4', 'V5', 'R1', 'O4', 'R2']);
    expect((at('V2') - at('O2')) / 86_400_000).toBeGreaterThanOrEqual(55);
    // The tray waits with its casts: made so that it is no more than 28 days old.
    const tray = plan.labSteps.find((each) => each.code === 'trays');
    expect((at('V2') - (tray?.endMs ?? 0)) / 86_400_000).toBeLessThan(29);
  });

  it('plans an upper denture beside a lower reline, and beside a digital arch', () => {
    for (const lower of [reline, digital]) {
      const plan = firstPlan(aRequest(combineArches({ upper: conventional, lower }), ZONE, NOW, { horizonWeeks: 16 }));
      const starts = plan.visits.map((each) => each.startMs);
      expect(starts).toEqual([...starts].sort((a, b) => a - b));
      expect(plan.deliveryOn).not.toBeNull();
    }
  });

  it('marks a visit outside the wishes, and keeps dates that are impossible free', () => {
    const request = aRequest(both, ZONE, NOW);
    const patient = {
      ...request.patient,
      wishes: { weekdays: [2, 3], from: '09:00', to: '12:00' },
      unavailableOn: ['2026-04-07', '2026-04-08'],
    };
    const offers = plans({ ...request, patient }, 3);
    for (const plan of offers) {
      expect(faultsOf(plan, conventional, request, ZONE)).toEqual([]);
      expect(plan.visits.filter((each) => !each.asWished)).toHaveLength(plan.wishesBroken);
      expect(plan.visits[0]?.startMs).toBeGreaterThanOrEqual(Date.parse('2026-04-09T00:00:00+02:00'));
      const startsMs = plan.visits.filter((each) => !each.asWished).map(({ startMs }) => startMs);
      expect(plan.givesUp.filter(({ kind }) => kind === 'outside-wishes')).toEqual(
        startsMs.length === 0 ? [] : [{ kind: 'outside-wishes', startsMs, zone: ZONE }],
      );
    }
    expect(offers.length).toBeGreaterThan(1);
  });

  it('works around busy chairs, absent clinicians and a full bench', () => {
    const week = { startMs: Date.parse('2026-04-13T00:00:00Z'), endMs: Date.parse('2026-04-18T00:00:00Z') };
    const clinic = aClinic(ZONE);
    const laboratory = aLaboratory(ZONE);
    const practice = aPractice(ZONE, {
      clinics: [
        {
          ...clinic,
          clinicians: clinic.clinicians.map((each, index) =>
            index === 0 ? { ...each, absences: [week], busy: [week] } : each,
          ),
        },
      ],
      laboratories: [
        {
          ...laboratory,
          workCentres: laboratory.workCentres.map((each) =>
            each.code === 'articulator'
              ? { ...each, places: each.places.map((place) => ({ ...place, busy: [week] })) }
              : each,
          ),
        },
      ],
    });
    const request = aRequest(both, ZONE, NOW, { practice });
    expect(faultsOf(firstPlan(request), conventional, request, ZONE)).toEqual([]);
  });

  it('keeps a booked visit where it is and plans the rest round it', () => {
    const free = firstPlan(aRequest(both, ZONE, NOW));
    const v2 = free.visits.find((each) => each.stage === 'V2');
    if (v2 === undefined) throw new Error('V2 is planned');
    const later = { ...v2, startMs: v2.startMs + 7 * 86_400_000, endMs: v2.endMs + 7 * 86_400_000 };
    const fixedStages = [
      {
        code: 'V2',
        startMs: later.startMs,
        endMs: later.endMs,
        clinicId: 'clinic',
        clinicianId: v2.clinicianId,
        chairId: v2.chairId,
        homeTravelMinutes: null,
      },
    ];
    const plan = firstPlan(aRequest(both, ZONE, NOW, { fixedStages }));
    expect(plan.visits.find((each) => each.stage === 'V2')).toMatchObject({
      startMs: later.startMs,
      endMs: later.endMs,
      isKept: true,
    });
  });

  it('plans on from a repeated jaw relation record with what is already made', () => {
    const start = firstPlan(aRequest(both, ZONE, NOW));
    const passed = ['V1', 'V2', 'V3', 'V4'];
    const done = startProgress(both);
    const progress = {
      stages: done.stages.map((row) => (passed.includes(row.code) ? { ...row, state: 'passed' as const } : row)),
      steps: done.steps.map((row) => {
        const step = both.steps.find((each) => each.code === row.code);
        return passed.includes(step?.beforeStage ?? '') ? { ...row, state: 'finished' as const } : row;
      }),
    };
    const outcome = applyLoop(both, progress, {
      loop: 'jaw-relation-wrong-at-trial',
      foundAt: 'V4',
      arches: ['upper', 'lower'],
      triesMade: 0,
    });
    const past = start.visits.filter((each) => passed.includes(each.stage));
    const nowMs = past.at(-1)?.endMs ?? NOW;
    const plan = firstPlan(
      aRequest(both, ZONE, nowMs, {
        progress: outcome.progress,
        fixedStages: past.map((each) => ({ ...each, code: each.stage })),
        fixedSteps: start.labSteps.filter((each) => passed.includes(each.beforeStage)),
      }),
    );
    expect(plan.visits.map((each) => [each.stage, each.round])).toEqual([
      ['V3', 2],
      ['V4', 2],
      ['V5', 1],
      ['R1', 1],
      ['R2', 1],
    ]);
    expect(plan.labSteps.filter((each) => each.round === 2).map((each) => each.code)).toEqual([
      'mount',
      'set-up',
      'contour',
    ]);
  });

  it('comes sooner in a rush, and names a laboratory that cannot do the work', () => {
    const usual = firstPlan(aRequest(both, ZONE, NOW)).deliveryOn ?? '';
    expect((firstPlan(aRequest(both, ZONE, NOW, { rush: true })).deliveryOn ?? '') < usual).toBe(true);
    const laboratory = aLaboratory(ZONE);
    const practice = aPractice(ZONE, {
      laboratories: [{ ...laboratory, workCentres: laboratory.workCentres.filter((each) => each.code !== 'curing') }],
    });
    expect(() => toChainProblem(aRequest(both, ZONE, NOW, { practice }))).toThrow(/"Laboratory" lacks curing/);
  });
});
