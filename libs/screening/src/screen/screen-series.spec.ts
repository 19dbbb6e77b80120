import { ewmaRunLength } from '../charts/run-length.js';
import { OptionError } from '../errors.js';
import { ewmaWidth } from './ewma-width.js';
import { normalValues } from './normal-values.builder.js';
import { LEARNED, screenSeries, type Drift, type SeriesOutcome } from './screen-series.js';

const settings = { valuesPerAlarm: 200, resolution: 0.001 };
const driftsOf = (outcome: SeriesOutcome): readonly Drift[] => (outcome.outcome === 'too-few' ? [] : outcome.drifts);

describe('width of the limits', () => {
  it('approaches the published one as target and spread become known', () => {
    // Lucas & Saccucci (1990), Technometrics 32:1-12, table 3: lambda 0.2, width 2.962 has a run length of 500.
    const known = ewmaWidth({ lambda: 0.2, valuesPerAlarm: 500, learned: 1_000_000 });
    expect(known).toBeCloseTo(2.962, 2);
    expect(ewmaRunLength(0.2, known, 0)).toBeCloseTo(500, -1);
    expect(ewmaWidth({ lambda: 0.2, valuesPerAlarm: 500, learned: LEARNED })).toBeGreaterThan(known + 0.2);
  });

  it('refuses a run length without meaning', () => {
    expect(() => ewmaWidth({ lambda: 0.2, valuesPerAlarm: 1, learned: LEARNED })).toThrow(OptionError);
  });
});

describe('a series of values', () => {
  it('gives false alarms about as rarely as set', () => {
    // 50 values a series are few beside the run length, so that hardly a series ends before its last.
    const [series, looked] = [1_000, 50];
    let alarms = 0;
    let values = 0;
    for (let stream = 0; stream < series; stream++) {
      const [first] = driftsOf(screenSeries(normalValues(LEARNED + looked, 23, stream), settings));
      if (first !== undefined) alarms++;
      values += first === undefined ? looked : first.foundAt - LEARNED + 1;
    }
    const asSet = values / settings.valuesPerAlarm;
    expect(alarms).toBeGreaterThan(asSet * 0.5);
    expect(alarms).toBeLessThan(asSet * 1.3);
  });

  it('finds a planted shift soon, and when it began', () => {
    const [shiftAt, shift] = [80, 2];
    const found = Array.from({ length: 200 }, (_, stream) => {
      const values = normalValues(120, 29, stream).map((value, at) => (at < shiftAt ? value : value + shift));
      // A false alarm before the shift would have its level learned anew: rare at this setting.
      return driftsOf(screenSeries(values, { ...settings, valuesPerAlarm: 1_000 })).find(
        ({ foundAt }) => foundAt >= shiftAt,
      );
    }).filter((drift) => drift !== undefined);
    expect(found.length).toBeGreaterThan(190);
    const delays = found.map(({ foundAt }) => foundAt - shiftAt).sort((a, b) => a - b);
    expect(delays[Math.floor(delays.length / 2)]).toBeLessThan(10);
    const near = found.filter(({ since, level, target }) => Math.abs(since - shiftAt) <= 5 && level > target + 0.5);
    expect(near.length).toBeGreaterThan(150);
  });

  it('takes one wild value for no drift', () => {
    const values = normalValues(90, 31).map((value, at) => (at === 60 ? 1e6 : value / 2));
    expect(screenSeries(values, settings)).toEqual({ outcome: 'steady', size: 90, drifts: [] });
  });

  it('keeps what it found when values are added', () => {
    const values = normalValues(400, 37).map((value, at) => value + (at >= 100 ? 3 : 0) - (at >= 250 ? 5 : 0));
    const all = driftsOf(screenSeries(values, settings));
    expect(all.length).toBeGreaterThanOrEqual(2);
    for (const length of [130, 200, 300]) {
      const earlier = driftsOf(screenSeries(values.slice(0, length), settings));
      expect(earlier).toEqual(all.filter(({ foundAt }) => foundAt < length));
    }
  });

  it('says that there are too few values, and how many it needs', () => {
    expect(screenSeries([60, 61, 62], settings)).toEqual({ outcome: 'too-few', size: 3, needed: LEARNED + 1 });
  });
});
