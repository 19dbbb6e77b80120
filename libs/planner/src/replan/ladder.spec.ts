import { seededRandom } from '@archwright/kernel';
import { ChainCache } from '../chain/cache.js';
import type { TwinPlan } from '../chain/exhaustive.twin.js';
import { JointPlanner, type JointQuestion } from './draft.js';
import { withHeld, type HeldTime } from './held-time.js';
import { climb, type JointPlan } from './ladder.js';
import { goTogether, movedOf, tinyCase, type TakenTime, type TinyCase } from './tiny-joint.twin.js';

const SETTINGS = { seed: 1, rounds: 24 };
const CASES = 400;

/** What visits of a present plan take, in the planner's terms. */
function heldBy({ joint }: TinyCase): HeldTime {
  const held = new Map<string, { startSlot: number; endSlot: number }[]>();
  joint.visits.forEach((now, at) => {
    const option = joint.problem.visits[at]!.options.find(({ clinic }) => clinic === now!.clinic)!;
    const range = { startSlot: now!.startSlot, endSlot: now!.startSlot + option.lengthSlots };
    for (const { key } of [option.clinicians[0]!, option.chairs[0]!]) held.set(key, [...(held.get(key) ?? []), range]);
  });
  return held;
}

/** The same case once a person is away for some slots, with the plans that are left. */
function without({ joint, plans }: TinyCase, person: string, startSlot: number, endSlot: number): TinyCase {
  const lost = new Map([[person, [{ startSlot, endSlot }]]]);
  return {
    joint: { ...joint, problem: withHeld(joint.problem, [lost], new ChainCache()) },
    plans: plans.filter(({ visits }) =>
      visits.every(({ clinician, start, end }) => clinician !== person || end <= startSlot || endSlot <= start),
    ),
  };
}

const isBroken = (each: TinyCase): boolean => each.plans.every((plan) => movedOf(each, plan) > 0);

/** Two cases whose present plans go together, and a person's absence, so many slots longer than a visit. */
function* disturbances(longer = 2): Generator<[TinyCase, TinyCase]> {
  for (let index = 0; index < CASES; index++) {
    const random = seededRandom(20260801, index);
    const pick = (plans: number): number => random.nextBelow(plans);
    const one = tinyCase('one', random, pick);
    const other = tinyCase('other', random, pick);
    if (one === null || other === null) continue;
    if (one.joint.problem.slotCount !== other.joint.problem.slotCount) continue;
    if (!goTogether(presentOf(one), presentOf(other))) continue;
    const first = presentOf(one).visits[0]!;
    yield [
      without(one, first.clinician, first.start, first.end + longer),
      without(other, first.clinician, first.start, first.end + longer),
    ];
  }
}

const presentOf = (each: TinyCase): TwinPlan => each.plans.find((plan) => movedOf(each, plan) === 0)!;

/** What a case holds that no plan is left for: what it was booked for before. */
function presentOfLost({ joint: { visits, problem } }: TinyCase): TakenTime {
  return {
    visits: visits.map((now, at) => {
      const { clinic, startSlot: start } = now!;
      const option = problem.visits[at]!.options.find((each) => each.clinic === clinic)!;
      return { clinic, clinician: option.clinicians[0]!.key, start, end: start + option.lengthSlots };
    }),
  };
}

/** Fewest moved visits of both together, by trying every pair. */
function fewest(one: TinyCase, other: TinyCase): number | null {
  let least: number | null = null;
  for (const a of one.plans) {
    for (const b of other.plans) {
      const moved = movedOf(one, a) + movedOf(other, b);
      if ((least === null || moved < least) && goTogether(a, b)) least = moved;
    }
  }
  return least;
}

function climbed(
  broken: readonly TinyCase[],
  neighbours: readonly TinyCase[],
  strangers: readonly TinyCase[] = [],
): JointPlan {
  const all = [...broken, ...neighbours, ...strangers];
  const question: JointQuestion = {
    broken: broken.map(({ joint }) => joint),
    neighbours: neighbours.map(({ joint }) => joint),
    held: new Map(all.map((each) => [each.joint.key, heldBy(each)])),
  };
  return climb(new JointPlanner(question), SETTINGS);
}

/** The plans in force afterwards, which must be ones that the twin knows. */
function inForce({ changes }: JointPlan, each: TinyCase): TwinPlan {
  const change = changes.get(each.joint.key);
  const starts = change?.plan.visits.map(({ startSlot, clinic }) => `${String(startSlot)} ${clinic}`);
  const found = each.plans.find(({ visits }) =>
    visits.every(({ start, clinic }, at) => {
      const now = each.joint.visits[at]!;
      return (starts?.[at] ?? `${String(now.startSlot)} ${now.clinic}`) === `${String(start)} ${clinic}`;
    }),
  );
  expect(found).toBeDefined();
  return found!;
}

describe('climbing the ladder', () => {
  it('repairs one case alone with the fewest moves that there are, and says so', () => {
    let repaired = 0;
    for (const [one, other] of disturbances()) {
      const beside = one.plans.filter((plan) => isBroken(other) || goTogether(plan, presentOf(other)));
      if (isBroken(other) || beside.length === 0) continue;
      const plan = climbed([one], []);
      const least = Math.min(...one.plans.map((each) => movedOf(one, each)));
      expect(plan.movedVisits).toBe(least);
      expect(plan.leastMovedVisits).toBe(least);
      expect(plan.unplanned).toEqual([]);
      repaired++;
    }
    expect(repaired).toBeGreaterThan(20);
  });

  it('proves a repair beside a case that takes no part: no plan that leaves its visits moves fewer', () => {
    const counted = { repaired: 0, tighter: 0 };
    for (const [one, other] of disturbances()) {
      if (isBroken(other)) continue;
      const beside = one.plans.filter((plan) => goTogether(plan, presentOf(other)));
      const plan = climbed([one], [], [other]);
      if (beside.length === 0) {
        expect(plan.unplanned).toMatchObject([{ isImpossible: one.plans.length === 0 }]);
        continue;
      }
      const least = Math.min(...beside.map((each) => movedOf(one, each)));
      expect([plan.movedVisits, plan.leastMovedVisits]).toEqual([least, least]);
      counted.repaired++;
      if (one.plans.some((each) => movedOf(one, each) < least)) counted.tighter++;
    }
    expect(counted.repaired).toBeGreaterThan(20);
    expect(counted.tighter).toBeGreaterThan(0);
  });

  it('asks another case to make room only when there is no other way, and never promises one time twice', () => {
    const counted = { possible: 0, found: 0, least: 0 };
    for (const [one, other] of disturbances()) {
      if (isBroken(other)) continue;
      const least = fewest(one, other);
      const alone = one.plans.some((plan) => goTogether(plan, presentOf(other)));
      const plan = climbed([one], [other]);
      if (least === null) {
        expect(plan.unplanned.map(({ key }) => key)).toEqual(['one']);
        continue;
      }
      expect(plan.leastMovedVisits).toBeLessThanOrEqual(least);
      if (alone) expect(plan.changes.has('other')).toBe(false);
      else counted.possible++;
      if (plan.unplanned.length > 0) continue;
      if (!alone) counted.found++;
      expect(goTogether(inForce(plan, one), inForce(plan, other))).toBe(true);
      expect(plan.movedVisits).toBeGreaterThanOrEqual(least);
      if (!alone && plan.movedVisits === least) counted.least++;
    }
    expect(counted.possible).toBeGreaterThan(2);
    expect(counted.found / counted.possible).toBeGreaterThan(0.7);
    expect(counted.least).toBe(counted.found);
  });

  it('repairs two broken cases together, within the bound', () => {
    const counted = { possible: 0, found: 0, least: 0, proved: 0 };
    for (const [one, other] of disturbances()) {
      if (!isBroken(other)) continue;
      const least = fewest(one, other);
      const plan = climbed([one, other], []);
      if (least === null) {
        expect(plan.unplanned.length).toBeGreaterThan(0);
        continue;
      }
      counted.possible++;
      if (plan.unplanned.length > 0) continue;
      counted.found++;
      expect(goTogether(inForce(plan, one), inForce(plan, other))).toBe(true);
      expect(plan.leastMovedVisits).toBeLessThanOrEqual(least);
      expect(plan.movedVisits).toBeGreaterThanOrEqual(least);
      if (plan.movedVisits === least) counted.least++;
      if (plan.movedVisits === plan.leastMovedVisits) counted.proved++;
    }
    expect(counted.possible).toBeGreaterThan(5);
    expect(counted.found / counted.possible).toBeGreaterThan(0.9);
    expect(counted.least / counted.found).toBeGreaterThan(0.9);
    expect(counted.proved / counted.found).toBeGreaterThan(0.7);
  });

  it('gives nobody the time of a broken case that it finds no plan for', () => {
    let left = 0;
    for (const [one, other] of disturbances(12)) {
      if (!isBroken(one) || !isBroken(other)) continue;
      const plan = climbed([one, other], []);
      if (plan.unplanned.length !== 1) continue;
      const [stays, moves] = plan.changes.has('one') ? [other, one] : [one, other];
      expect(goTogether(presentOfLost(stays), inForce(plan, moves))).toBe(true);
      left++;
    }
    expect(left).toBeGreaterThan(5);
  });

  it('gives the same plan for the same seed', () => {
    let compared = 0;
    for (const [one, other] of disturbances()) {
      if (!isBroken(other)) continue;
      expect(climbed([one, other], [])).toEqual(climbed([one, other], []));
      if (++compared === 5) break;
    }
    expect(compared).toBe(5);
  });
});
