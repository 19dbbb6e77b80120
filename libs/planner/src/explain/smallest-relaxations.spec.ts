import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { Twin } from '../chain/exhaustive.twin.js';
import type { ArcTables, ChainProblem } from '../chain/model.js';
import { FAMILIES, tinyProblem } from '../chain/tiny-problem.twin.js';
import { earliestDelivery } from '../replan/earliest-delivery.js';
import { smallestRelaxations } from './smallest-relaxations.js';

/** The short run's count; the long run of the chain search sets 10000. */
const CASES = Number(process.env['ARCHWRIGHT_CHAIN_CASES'] ?? 400);
const MOST_SLOTS = 5;

/** A relaxation of a tiny problem; its step is slots of a longest wait, or 1 for people and clinics. */
interface Relaxation {
  readonly most: number;
  readonly apply: (problem: ChainProblem, step: number) => ChainProblem;
}

function longer<Arc extends ArcTables>(arc: Arc, slots: number, slotCount: number): Arc {
  return { ...arc, hi: arc.hi?.map((slot) => Math.min(slot + slots, slotCount - 1)) ?? null };
}

function relaxationsOf({ lags, phases, slotCount }: ChainProblem): Relaxation[] {
  const waits = lags.flatMap(({ hi }, at): Relaxation[] =>
    hi === null
      ? []
      : [
          {
            most: MOST_SLOTS,
            apply: (problem, step) => ({
              ...problem,
              lags: problem.lags.map((lag, index) => (index === at ? longer(lag, step, slotCount) : lag)),
            }),
          },
        ],
  );
  const inside = phases.flatMap((phase, at): Relaxation[] =>
    phase.labs.every(({ arcs }) => arcs.every(({ hi }) => hi === null))
      ? []
      : [
          {
            most: MOST_SLOTS,
            apply: (problem, step) => ({
              ...problem,
              phases: problem.phases.map((each, index) =>
                index !== at
                  ? each
                  : {
                      ...each,
                      labs: each.labs.map((lab) => ({
                        ...lab,
                        arcs: lab.arcs.map((arc) => longer(arc, step, slotCount)),
                      })),
                    },
              ),
            }),
          },
        ],
  );
  const accepting = (what: 'clinicians' | 'clinics'): Relaxation => ({
    most: 1,
    apply: (problem, step) => ({
      ...problem,
      visits: problem.visits.map((visit) => ({
        ...visit,
        options: visit.options.map((option) => ({
          ...option,
          refused: option.refused && (what === 'clinicians' || step === 0),
          clinicians: option.clinicians.map((clinician) => ({
            ...clinician,
            refused: clinician.refused && (what === 'clinics' || step === 0),
          })),
        })),
      })),
    }),
  });
  return [...waits, ...inside, accepting('clinicians'), accepting('clinics')];
}

/** The problem with some more people who are not accepted, so that a longer wait alone is often not enough. */
function stricter(problem: ChainProblem, random: SeededRandom): ChainProblem {
  return {
    ...problem,
    visits: problem.visits.map((visit) => ({
      ...visit,
      options: visit.options.map((option) => ({
        ...option,
        clinicians: option.clinicians.map((clinician) => ({
          ...clinician,
          refused: clinician.refused || random.nextBelow(100) < 40,
        })),
      })),
    })),
  };
}

const relaxed = (problem: ChainProblem, relaxations: readonly Relaxation[], steps: readonly number[]): ChainProblem =>
  relaxations.reduce((each, { apply }, at) => apply(each, steps[at]!), problem);

/** Whether exhaustive search finds a plan; `null`, which decides nothing, when it would have to look at too many. */
function hasPlan(problem: ChainProblem): boolean | null {
  const plans = new Twin(problem).plans();
  return plans === null ? null : plans.length > 0;
}

describe('the smallest relaxations of a problem without a plan', () => {
  it('yield a plan, every smaller step of the same kind does not, and none are missed: exhaustive search agrees', () => {
    const seen = { single: 0, pairs: 0, none: 0 };
    for (let index = 0; index < CASES; index++) {
      const random = seededRandom(20260901, index);
      const problem = stricter(tinyProblem(random, FAMILIES[index % FAMILIES.length]!), random);
      if (hasPlan(problem) !== false) continue;
      const relaxations = relaxationsOf(problem);
      const most = relaxations.map((each) => each.most);
      const at = (steps: readonly number[]) => relaxed(problem, relaxations, steps);
      const found = smallestRelaxations(most, (steps) => earliestDelivery(at(steps)));
      for (const { steps, answer } of found) {
        expect([index, steps, hasPlan(at(steps)) ?? true]).toEqual([index, steps, true]);
        expect(earliestDelivery(at(steps))).toBe(answer);
        steps.forEach((step, which) => {
          for (let less = 0; less < step; less++) {
            const smaller = steps.with(which, less);
            expect([index, smaller, hasPlan(at(smaller)) ?? false]).toEqual([index, smaller, false]);
          }
        });
      }
      const sizes = new Set(found.map(({ steps }) => steps.filter((step) => step > 0).length));
      expect(sizes.size).toBeLessThanOrEqual(1);
      expectNoneMissed(most, found, (steps) => hasPlan(at(steps)));
      if (sizes.has(1)) seen.single++;
      else if (sizes.has(2)) seen.pairs++;
      else seen.none++;
    }
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(CASES / 100);
    if (process.env['ARCHWRIGHT_CHAIN_CASES'] !== undefined) process.stdout.write(`${JSON.stringify(seen)}\n`);
  }, 3_600_000);

  it('are ordered by the sum of their steps, then as declared, and are asked for without trying every two', () => {
    let asked = 0;
    const ask = ([a = 0, b = 0, c = 0, d = 0]: readonly number[]) => {
      asked++;
      return a >= 3 && (b >= 1 || c >= 4 || d >= 1) ? 'plan' : null;
    };
    const found = smallestRelaxations([9, 1, 9, 0], ask);
    expect(found.map(({ steps }) => steps)).toEqual([
      [3, 1, 0, 0],
      [3, 0, 4, 0],
    ]);
    expect(asked).toBeLessThan(25);
  });
});

/** What is not proposed must not help: single ones always, two together when no single one does. */
function expectNoneMissed(
  most: readonly number[],
  found: readonly { readonly steps: readonly number[] }[],
  helps: (steps: readonly number[]) => boolean | null,
): void {
  const isProposed = (...which: number[]) =>
    found.some(({ steps }) => steps.every((step, at) => step > 0 === which.includes(at)));
  const only = (...which: number[]) => most.map((step, at) => (which.includes(at) ? step : 0));
  const hasSingle = most.some((_, at) => isProposed(at));
  most.forEach((_, first) => {
    if (!isProposed(first)) expect(helps(only(first))).not.toBe(true);
    if (hasSingle) return;
    most.forEach((__, second) => {
      if (second > first && !isProposed(first, second)) expect(helps(only(first, second))).not.toBe(true);
    });
  });
}
