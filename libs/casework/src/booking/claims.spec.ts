import fc from 'fast-check';
import type { CasePlan, PlanRequest } from '@archwright/protocol';
import type { ClaimRequest } from '@archwright/records';
import { aClinic, aPractice, aRequest, NOW_MS } from '../planning/practice.builder.js';
import { toPlanView } from '../planning/plan-view.js';
import { findOffers } from '../planning/search.js';
import { NO_CHANGE, planHashOf } from '../planning/stored-plan.js';
import { stepClaims, visitClaims } from './claims.js';
import { segmentsOf } from './segments.js';

const DAY_MS = 86_400_000;
const NO_LABELS = {
  clinics: new Map(),
  clinicians: new Map(),
  chairs: new Map(),
  laboratories: new Map(),
  places: new Map(),
};
const patient = { id: 'patient', travelMinutes: 20 };

const claimsOf = (plan: CasePlan): ClaimRequest[] => [
  ...visitClaims(
    plan.visits.map((visit) => ({ visit, appointmentId: visit.stage, hold: null })),
    [],
    patient,
  ),
  ...stepClaims(plan.labSteps.map((step) => ({ step, labStepId: step.code, hold: null }))),
];

/** A practice in which whole days are taken at random, and a patient with wishes at random. */
const situations = fc.record({
  code: fc.constantFrom('conventional', 'digital-printed-bases', 'repair', 'reline'),
  busyDays: fc.array(fc.integer({ min: 0, max: 60 }), { maxLength: 12 }),
  fullDays: fc.array(fc.integer({ min: 0, max: 60 }), { maxLength: 6 }),
  weekdays: fc.uniqueArray(fc.integer({ min: 1, max: 5 }), { maxLength: 3 }),
});

interface Situation {
  readonly code: string;
  readonly busyDays: readonly number[];
  readonly fullDays: readonly number[];
  readonly weekdays: readonly number[];
}

function requestIn({ code, busyDays, fullDays, weekdays }: Situation): PlanRequest {
  const wholeDay = (day: number) => ({ startMs: NOW_MS + day * DAY_MS, endMs: NOW_MS + (day + 1) * DAY_MS });
  const practice = aPractice([aClinic('north', busyDays.map(wholeDay))], fullDays.map(wholeDay));
  const request = aRequest(code, { practice });
  return { ...request, patient: { ...request.patient, wishes: { weekdays, from: null, to: null } } };
}

describe('a plan that is booked', () => {
  it('takes exactly the times and resources that were shown, none of them twice', () => {
    let booked = 0;
    fc.assert(
      fc.property(situations, (situation) => {
        for (const { plan } of findOffers(requestIn(situation), 2)) {
          booked++;
          const claims = claimsOf(plan);
          const shown = toPlanView(plan, NO_LABELS);
          const times = (owner: string, resourceId: string) =>
            claims
              .filter((each) => (each.appointmentId ?? each.labStepId) === owner && each.resourceId === resourceId)
              .map(({ startsAt, endsAt }) => [startsAt.toISOString(), endsAt.toISOString()]);
          for (const { stages, chairId, clinicianId, startsAt, endsAt } of shown.visits) {
            expect(times(stages[0] ?? '', chairId ?? '')).toEqual([[startsAt, endsAt]]);
            expect(times(stages[0] ?? '', clinicianId)).toEqual([[startsAt, endsAt]]);
            expect(times(stages[0] ?? '', patient.id)).toContainEqual([startsAt, endsAt]);
          }
          for (const { code, placeId, startsAt, endsAt } of shown.labSteps) {
            const taken = times(code, placeId ?? '');
            expect(taken.every(([from = '', until = '']) => from >= startsAt && until <= endsAt)).toBe(true);
            expect(taken.length).toBeGreaterThan(0);
          }
          expect(claims.filter((each) => claims.some((other) => each !== other && overlaps(each, other)))).toEqual([]);
          expect(
            claims.every(({ startsAt, endsAt }) => (startsAt.getTime() % 300_000) + (endsAt.getTime() % 300_000) === 0),
          ).toBe(true);
        }
      }),
      { seed: 20260706, numRuns: 8 },
    );
    expect(booked).toBeGreaterThan(4);
  }, 300_000);

  it('has a hash that survives storage and changes with any time', () => {
    const [found] = findOffers(aRequest('repair'), 1);
    if (found === undefined) throw new Error('A repair can be planned.');
    const { plan } = found;
    const hash = planHashOf('case', { plan, change: NO_CHANGE });
    const stored = JSON.parse(JSON.stringify(plan)) as CasePlan;
    expect(planHashOf('case', { plan: stored, change: NO_CHANGE })).toBe(hash);
    const visits = plan.visits.map((each, index) => (index > 0 ? each : { ...each, startMs: each.startMs + 300_000 }));
    expect(planHashOf('case', { plan: { ...plan, visits }, change: NO_CHANGE })).not.toBe(hash);
    expect(planHashOf('other', { plan, change: NO_CHANGE })).not.toBe(hash);
  });

  it('lets the patient travel once between visits that lie close together', () => {
    const [found] = findOffers(aRequest('conventional'), 1);
    const visit = found?.plan.visits[0];
    if (visit === undefined) throw new Error('A first visit is planned.');
    const next = { ...visit, startMs: visit.endMs + 600_000, endMs: visit.endMs + 1_200_000, kits: [] };
    const claims = visitClaims(
      [
        { visit, appointmentId: 'first', hold: null },
        { visit: next, appointmentId: 'second', hold: null },
      ],
      [],
      patient,
    );
    const travel = claims.filter(({ purpose }) => purpose === 'travel');
    expect(travel.map(({ startsAt, endsAt }) => (endsAt.getTime() - startsAt.getTime()) / 60_000).sort()).toEqual([
      10, 20, 20,
    ]);
  });

  it('takes people and kits along to a visit at home, and neither a chair nor a way of the patient', () => {
    const request = aRequest('conventional');
    const [found] = findOffers({ ...request, patient: { ...request.patient, homeTravelMinutes: 25 } }, 1);
    const visit = found?.plan.visits.find(({ assistantId }) => assistantId !== null);
    if (visit === undefined) throw new Error('A visit with an assistant is planned.');
    const kits = [{ code: 'tracing-set', kitId: 'kit', readyAtMs: visit.endMs + 3_600_000 }];
    const claims = visitClaims([{ visit: { ...visit, kits }, appointmentId: 'home', hold: null }], [], patient);
    const minutesOf = (resourceId: string | null) =>
      claims
        .filter((each) => each.resourceId === resourceId)
        .map(({ startsAt, endsAt, purpose }) => [
          (startsAt.getTime() - visit.startMs) / 60_000,
          (endsAt.getTime() - visit.endMs) / 60_000,
          purpose,
        ]);
    const length = (visit.endMs - visit.startMs) / 60_000;
    for (const person of [visit.clinicianId, visit.assistantId]) {
      expect(minutesOf(person)).toEqual([
        [0, 0, 'visit'],
        [-25, -length, 'travel'],
        [length, 25, 'travel'],
      ]);
    }
    expect(minutesOf('kit')).toEqual([[-25, 60, 'visit']]);
    expect(minutesOf(patient.id)).toEqual([[0, 0, 'visit']]);
    expect(claims.map(({ resourceId }) => resourceId)).not.toContain('');
  });

  it('tells the parts of each laboratory step without a gap', () => {
    const request = aRequest('conventional');
    const [found] = findOffers(request, 1);
    for (const step of found?.plan.labSteps ?? []) {
      const segments = segmentsOf(step, request.chain);
      expect(segments[0]?.startsAt).toBe(new Date(step.startMs).toISOString());
      expect(segments.at(-1)?.endsAt).toBe(new Date(step.endMs).toISOString());
      expect(segments.slice(1).every(({ startsAt }, index) => startsAt === segments[index]?.endsAt)).toBe(true);
    }
    const cure = found?.plan.labSteps.find(({ code }) => code === 'cure');
    expect(cure === undefined ? [] : segmentsOf(cure, request.chain).map(({ kind }) => kind)).toEqual(['unattended']);
  });
});

const overlaps = (a: ClaimRequest, b: ClaimRequest): boolean =>
  a.resourceId === b.resourceId && a.startsAt < b.endsAt && a.endsAt > b.startsAt;
