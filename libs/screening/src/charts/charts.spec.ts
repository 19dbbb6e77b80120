import { seededRandom } from '@archwright/kernel';
import { NoSpreadError, OptionError, UnequalLengthsError } from '../errors.js';
import { normalQuantile } from '../distribution/quantiles.js';
import { rateChart, shareChart } from './attribute-charts.js';
import { cusum } from './cusum.js';
import { ewma } from './ewma.js';
import { individualsChart } from './individuals-chart.js';
import { multirule, type ControlRule } from './multirule.js';
import { ruleRunLength } from './rule-run-length.js';
import { cusumRunLength, ewmaRunLength } from './run-length.js';
import { subgroupCharts } from './subgroup-charts.js';

// The worked examples of handbooks and papers stand in test/reference/statistics and are run by check-case.spec.ts.
const RUNS = 400;
const LONGEST = 4000;

/** Mean number of normal values until `signalAt` finds one; each run from a stream of its own. */
function simulatedRunLength(shift: number, signalAt: (z: readonly number[]) => number | null): number {
  let total = 0;
  for (let run = 0; run < RUNS; run++) {
    const random = seededRandom(41, run);
    const z = Array.from(
      { length: LONGEST },
      () => shift + normalQuantile((random.nextUint32() + 0.5) / 0x1_0000_0000),
    );
    total += (signalAt(z) ?? LONGEST) + 1;
  }
  return total / RUNS;
}

describe('average run length', () => {
  // The standard error of 400 nearly geometric runs is a twentieth of their mean; three of them are allowed.
  const agrees = (simulated: number, exact: number) => {
    expect(Math.abs(simulated / exact - 1)).toBeLessThan(0.15);
  };

  it('of a cumulative sum is what its simulation takes', () => {
    const design = { target: 0, k: 0.5, h: 3 };
    agrees(
      simulatedRunLength(1, (z) => cusum(z, design).signals[0] ?? null),
      cusumRunLength(0.5, 3, 1),
    );
    agrees(
      simulatedRunLength(0, (z) => cusum(z, design).signals[0] ?? null),
      cusumRunLength(0.5, 3, 0),
    );
  });

  it('of an EWMA at its asymptotic limits is what its simulation takes', () => {
    const design = { target: 0, sigma: 1, lambda: 0.2, width: 2.4 };
    const firstBeyond = (z: readonly number[]) => {
      const { averages, upperAsymptotic } = ewma(z, design);
      const first = averages.findIndex((average) => Math.abs(average) > upperAsymptotic);
      return first < 0 ? null : first;
    };
    agrees(simulatedRunLength(0.5, firstBeyond), ewmaRunLength(0.2, 2.4, 0.5));
  });

  it('of a rule set is what its simulation takes', () => {
    const rules: readonly ControlRule[] = ['1-3s', '2of3-2s', '4-1s'];
    agrees(
      simulatedRunLength(1, (z) => multirule(z.slice(0, 400), rules).firstRejection),
      ruleRunLength(rules, 1),
    );
  });

  it('falls with the shift', () => {
    expect(cusumRunLength(0.5, 5, 0)).toBeGreaterThan(cusumRunLength(0.5, 5, 0.5));
    expect(() => cusumRunLength(0.5, 0, 0)).toThrow(OptionError);
  });
});

describe('control charts', () => {
  it('signal a value beyond the limits, and its jump', () => {
    const values = [10, 10.2, 9.9, 10.1, 10, 9.8, 10.1, 10, 13, 10, 10.1];
    expect(individualsChart(values)).toMatchObject({ outside: [8], movingRangeOutside: [8, 9] });
  });

  it('narrow with the size of the group, and are cut at zero', () => {
    const { upper, lower } = shareChart([2, 8], [20, 80]);
    expect(upper[1]).toBeLessThan(upper[0] ?? NaN);
    expect(lower[0]).toBe(0);
  });

  it('refuse what they cannot chart', () => {
    expect(() => individualsChart([5, 5, 5, 5])).toThrow(NoSpreadError);
    expect(() => subgroupCharts([[1, 2], [1]])).toThrow(UnequalLengthsError);
    expect(() => shareChart([5, 1], [4, 4])).toThrow(/count 5 is not accepted. Accepted: at most its size, 4/);
    expect(() => rateChart([1, 2], [1, 0])).toThrow(/size 0 is not accepted/);
    expect(() => cusum([1], { target: 0, k: -1, h: 1 })).toThrow(OptionError);
    expect(() => ewma([1], { target: 0, sigma: 0, lambda: 0.2, width: 3 })).toThrow(/sigma 0 is not accepted/);
  });
});
