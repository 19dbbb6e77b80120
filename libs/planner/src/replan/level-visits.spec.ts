import { seededRandom } from '@archwright/kernel';
import { tinyProblem } from '../chain/tiny-problem.twin.js';
import type { ChainProblem, SlotBits } from '../chain/model.js';
import type { WorkloadAim } from '../workload/objective.js';
import { ChainCache } from '../chain/cache.js';
import type { LevelCentre } from './centre-load.js';
import { JointPlanner } from './draft.js';
import { overlap } from './ejection.js';
import { timeOf, withHeld, type HeldTime } from './held-time.js';
import type { JointCase } from './joint-case.js';
import { compareLevels, type CaseStanding } from './level-objective.js';
import { VisitLevelling, type LevelPlan, type LevelQuestion } from './level-visits.js';
import { replanChain, type MovedPlan } from './replan-chain.js';

const DAY = 10;
const SLOTS = 4 * DAY;

function bits(holds: (slot: number) => boolean, slotCount = SLOTS): SlotBits {
  const made = new Uint32Array((slotCount + 31) >> 5);
  for (let slot = 0; slot < slotCount; slot++) if (holds(slot)) made[slot >> 5]! |= 1 << (slot & 31);
  return made;
}

const always = bits(() => true);
/** The bench is open for the first five slots of each day. */
const benchHours = bits((slot) => slot % DAY < 5);

/** Work of four slots on the one bench, then a visit of one slot that may start where `allowed` says. */
function oneVisit(person: string, allowed: SlotBits): ChainProblem {
  const resource = (key: string) => ({ key, free: always });
  return {
    slotCount: SLOTS,
    dayOfSlot: Int32Array.from({ length: SLOTS }, (_, slot) => Math.floor(slot / DAY)),
    halfDayOfSlot: Int32Array.from({ length: SLOTS }, (_, slot) => Math.floor(slot / 5)),
    visits: [
      {
        key: 'try-in',
        follows: null,
        options: [
          {
            clinic: 'north',
            refused: false,
            lengthSlots: 1,
            open: always,
            clinicians: [{ key: person, free: always, placementCost: null, refused: false }],
            chairs: [resource(`${person}'s chair`)],
            assistants: null,
            kits: [],
            allowed,
            allowedIfLifted: null,
          },
        ],
        wished: null,
      },
    ],
    deliveryVisit: 0,
    lags: [],
    phases: [
      {
        key: 'set-up',
        after: null,
        before: 0,
        labs: [
          {
            lab: 'lab',
            operations: [
              {
                key: 'set-up',
                centre: 'benches',
                centreOpen: benchHours,
                segments: [{ slots: 4, mode: 'pauses', holdsPlace: true }],
                places: [resource('bench')],
                batches: [],
                allowed: null,
              },
            ],
            arcs: [
              {
                key: 'back',
                from: 0,
                to: 'before',
                anchor: 'end',
                lo: Int32Array.from({ length: SLOTS + 1 }, (_, slot) => slot),
                hi: null,
                byClinic: null,
              },
            ],
          },
        ],
      },
    ],
    mixing: 'any-clinic',
    seenBy: null,
    placement: { bufferSteps: [], mostCost: 0 },
  };
}

const work = (startSlot: number) => [{ operation: 'set-up', lab: 'lab', startSlot, place: 'bench' }];
const onBench = (startSlot: number): HeldTime => new Map([['bench', [{ startSlot, endSlot: startSlot + 4 }]]]);
const bench: LevelCentre = { key: 'benches', open: benchHours, places: [{ key: 'bench', free: always }] };

/**
 * One case's visit on the second day stays, and its work is only planned for that day: two slots late. The first day's
 * bench is taken by a case whose visit is free.
 */
function competing(): LevelQuestion {
  const late: JointCase = {
    key: 'late',
    problem: oneVisit(
      'ada',
      bits((slot) => slot === 12),
    ),
    visits: [null],
    operations: work(10),
  };
  const free: JointCase = {
    key: 'free',
    problem: oneVisit('bo', always),
    visits: [{ startSlot: 12, clinic: 'north' }],
    operations: work(0),
  };
  return {
    planner: new JointPlanner({
      broken: [late, free],
      neighbours: [],
      held: new Map([
        ['late', onBench(10)],
        ['free', onBench(0)],
      ]),
    }),
    centres: [bench],
    dayOfSlot: late.problem.dayOfSlot,
    present: new Map([
      ['late', { lateness: 2, inProgress: 4 }],
      ['free', { lateness: 0, inProgress: 4 }],
    ]),
  };
}

function searched(question: LevelQuestion, aim: WorkloadAim, seed: number, rounds: number): LevelPlan {
  const search = new VisitLevelling(question, { seed, stream: 0, aim });
  while (!search.isDone && search.rounds < rounds) search.runRound();
  return search.best;
}

describe('visits chosen again', () => {
  it('moves the one free visit that makes room for the late work of a visit that stays', () => {
    const { objective, changes } = searched(competing(), 'fewest-moves', 1, 60);
    expect(objective).toMatchObject({ lateness: 0, movedVisits: 1, movedSteps: 2 });
    expect(changes.get('late')?.plan.operations).toMatchObject([{ startSlot: 0 }]);
    expect(changes.get('late')?.plan.movedVisits).toBe(0);
    expect(changes.get('free')?.plan.operations).toMatchObject([{ startSlot: 4, endSlot: 13 }]);
    expect(changes.get('free')?.plan.visits[0]?.startSlot).toBeGreaterThanOrEqual(13);
  });

  it('leaves what no free visit can help as it is', () => {
    const question = competing();
    const late = question.planner.caseOf('late');
    const alone = new JointPlanner({
      broken: [late],
      neighbours: [],
      held: new Map([
        ['late', onBench(10)],
        ['free', onBench(0)],
      ]),
    });
    const { objective, changes } = searched({ ...question, planner: alone }, 'fewest-moves', 1, 60);
    expect(objective.lateness).toBe(2);
    expect(changes.size).toBe(0);
  });
});

/** Two cases of a tiny practice with bench places in common, as they might be booked beside each other. */
function tinyQuestion(index: number): { question: LevelQuestion; starts: ReadonlyMap<string, MovedPlan> } | null {
  const random = seededRandom(20261127, index);
  const first = tinyProblem(random, 'own-work-competes');
  const second = tinyProblem(random, 'own-work-competes');
  const { slotCount, dayOfSlot } = first;
  if (second.slotCount !== slotCount) return null;
  const cache = new ChainCache();
  const [one] = replanChain(first, first.visits.map(() => null), 'earliest', 1, cache); // prettier-ignore
  if (one === undefined) return null;
  const beside = withHeld(second, [timeOf(one)], cache);
  const [two] = replanChain(beside, second.visits.map(() => null), 'earliest', 1, cache); // prettier-ignore
  if (two === undefined) return null;
  const jointOf = (key: string, problem: ChainProblem, plan: MovedPlan): JointCase => ({
    key,
    problem,
    visits: plan.visits.map(({ startSlot, clinic }) => ({ startSlot, clinic })),
    operations: plan.operations.map(({ operation, lab, startSlot, place }) => ({ operation, lab, startSlot, place })),
  });
  const places = [...new Set([...timeOf(one).keys(), ...timeOf(two).keys()])].filter((key) => /bench|place/.test(key));
  const free = bits(() => true, slotCount);
  const standing = (lateness: number): CaseStanding => ({ lateness, inProgress: 100 });
  return {
    question: {
      planner: new JointPlanner({
        broken: [jointOf('one', first, one), jointOf('two', second, two)],
        neighbours: [],
        held: new Map([
          ['one', timeOf(one)],
          ['two', timeOf(two)],
        ]),
      }),
      centres: [
        {
          key: 'bench',
          open: bits((slot) => slot % 6 < 3, slotCount),
          places: places.slice(0, 2).map((key) => ({ key, free })),
        },
      ],
      dayOfSlot,
      present: new Map([
        ['one', standing(random.nextBelow(2))],
        ['two', standing(0)],
      ]),
    },
    starts: new Map([
      ['one', one],
      ['two', two],
    ]),
  };
}

/** Slots above 85 % of a day's, squared, counted slot by slot. */
function overloadBySlot({ centres: [centre], dayOfSlot }: LevelQuestion, held: readonly HeldTime[]): number {
  const days = new Map<number, { open: number; load: number }>();
  dayOfSlot.forEach((day, slot) => {
    if (((centre!.open[slot >> 5]! >>> (slot & 31)) & 1) === 0) return;
    const sum = days.get(day) ?? { open: 0, load: 0 };
    for (const { key } of centre!.places) {
      sum.open++;
      for (const each of held)
        for (const { startSlot, endSlot } of each.get(key) ?? []) if (startSlot <= slot && slot < endSlot) sum.load++;
    }
    days.set(day, sum);
  });
  const over = ({ open, load }: { open: number; load: number }) => Math.floor(Math.max(0, load - 0.85 * open)) ** 2;
  return [...days.values()].reduce((sum, day) => sum + over(day), 0);
}

describe.each(['fewest-moves', 'level-load'] as const)('on random pairs of cases, for %s', (aim) => {
  const questions = Array.from({ length: 400 }, (_, index) => tinyQuestion(index)).filter((each) => each !== null);

  it('never makes anything worse, and what it plans goes together', () => {
    let better = 0;
    for (const { question, starts } of questions) {
      const { objective: before } = searched(question, aim, 7, 0);
      const { objective, changes } = searched(question, aim, 7, 25);
      expect(compareLevels(objective, before, aim)).toBeLessThanOrEqual(0);
      if (compareLevels(objective, before, aim) < 0) better++;
      const [one, two] = ['one', 'two'].map((key) => timeOf(changes.get(key)?.plan ?? starts.get(key)!));
      expect(overlap(one!, two!)).toBe(false);
      expect(objective.overload).toBe(overloadBySlot(question, [one!, two!]));
      expect(objective.movedVisits).toBe([...changes.values()].reduce((sum, { plan }) => sum + plan.movedVisits, 0));
    }
    expect(better).toBeGreaterThan(10);
  });

  it('finds the same by the same seed and number of rounds', () => {
    for (const { question } of questions.slice(0, 20)) {
      expect(searched(question, aim, 3, 15)).toEqual(searched(question, aim, 3, 15));
    }
  });
});
