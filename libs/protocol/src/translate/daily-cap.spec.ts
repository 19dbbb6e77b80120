import { localDate, type Interval } from '@archwright/calendar';
import { planOffers } from '@archwright/planner';
import { combineArches } from '../combine.js';
import { conventional } from '../paths/conventional.js';
import { PlanningAxis } from './axis.js';
import { DailyCap } from './daily-cap.js';
import { fromChainPlan } from './plan.js';
import { toChainProblem } from './problem.js';
import { remainingOf } from './remaining.js';
import type { PlanRequest } from './request.js';
import { aRequest } from './small-practice.builder.js';

const ZONE = 'Europe/Berlin';
const NOW = Date.parse('2026-04-07T06:00:00Z');
const HOUR_MS = 3_600_000;
const chain = combineArches({ upper: conventional });

/** A patient who sits for so many minutes a day, with visits of another case. */
function request(chairMinutesPerDay: number, otherVisits: readonly Interval[], change: Partial<PlanRequest> = {}) {
  const asked = aRequest(chain, ZONE, NOW, change);
  return { ...asked, patient: { ...asked.patient, chairMinutesPerDay, otherVisits } };
}

function firstVisits(asked: PlanRequest): { on: string; minutes: number }[] {
  const { problem, names } = toChainProblem(asked);
  const [offer] = planOffers(problem, 1).offers;
  if (offer === undefined) throw new Error('no plan found');
  return fromChainPlan(offer, names).visits.map(({ startMs, endMs }) => ({
    on: localDate(startMs, ZONE),
    minutes: (endMs - startMs) / 60_000,
  }));
}

const eveningOf = (on: string, hours: number): Interval => {
  const startMs = Date.parse(`${on}T16:00:00Z`);
  return { startMs, endMs: startMs + hours * HOUR_MS };
};

describe('the minutes that a patient can sit on one day', () => {
  const [first] = firstVisits(request(480, []));
  const { on = '', minutes = 0 } = first ?? {};

  it('are shared with visits of other cases on that day', () => {
    const other = [eveningOf(on, 1)];
    expect(firstVisits(request(minutes + 60, other))[0]?.on).toBe(on);
    expect(firstVisits(request(minutes + 59, other))[0]?.on).not.toBe(on);
    // Another day's visit takes nothing of this one's minutes.
    expect(firstVisits(request(minutes + 59, [eveningOf('2026-04-06', 1)]))[0]?.on).toBe(on);
  });

  it('are shared with a visit of this case that has begun', () => {
    const begun = {
      code: 'V0',
      startMs: NOW - HOUR_MS,
      endMs: NOW,
      clinicId: 'clinic',
      clinicianId: 'clinician-1',
      chairId: 'chair-1',
      homeTravelMinutes: null,
    };
    const today = localDate(NOW, ZONE);
    expect(on).toBe(today);
    expect(firstVisits(request(minutes + 59, [], { fixedStages: [begun] }))[0]?.on).not.toBe(today);
  });

  it('leave a visit that is too long by itself on a day of its own', () => {
    expect(firstVisits(request(15, []))[0]?.on).toBe(on);
    expect(firstVisits(request(15, [eveningOf(on, 1)]))[0]?.on).not.toBe(on);
  });

  it('keep two visits apart on the days on which they have no room together', () => {
    const asked = request(240, [eveningOf('2026-04-09', 2)]);
    const { visits } = remainingOf(asked);
    const pair = visits.slice(0, 2).map((each) => ({
      ...each,
      stage: { ...each.stage, chairMinutes: { ...each.stage.chairMinutes, typical: 90 } },
    }));
    const axis = new PlanningAxis(NOW, 2);
    const [lag, ...more] = DailyCap.of(axis, asked, ZONE)?.lags(pair) ?? [];
    expect(more).toEqual([]);
    expect(lag).toMatchObject({ from: 0, to: 1, hi: null });
    const slot = (time: string) => axis.slotFrom(Date.parse(time));
    // 120 and 2 times 90 minutes are more than 240 on the ninth, and on no other day.
    expect(lag?.lo?.[slot('2026-04-08T09:00:00Z')]).toBe(slot('2026-04-08T09:00:00Z'));
    expect(lag?.lo?.[slot('2026-04-09T09:00:00Z')]).toBe(slot('2026-04-09T22:00:00Z'));
    expect(lag?.lo?.every((from, end) => end === 0 || from >= (lag.lo?.[end - 1] ?? 0))).toBe(true);
    expect(DailyCap.of(axis, request(300, [eveningOf('2026-04-09', 2)]), ZONE)?.lags(pair)).toEqual([]);
    const kept = pair.map((each) => ({ ...each, kept: { ...eveningOf('2026-04-09', 1) } as never }));
    expect(DailyCap.of(axis, asked, ZONE)?.lags(kept)).toEqual([]);
  });
});
