import { seededRandom } from '@archwright/kernel';
import { normalQuantile } from '@archwright/screening';
import { findDrifts, type FoundDrift } from './series.js';
import type { StageValue } from './stage-values.js';

const SETTINGS = { valuesPerAlarm: 1_000, resolution: 0.001 };
/** Whose turn it is at each value: three people in no order, by their own seed. */
const people = (seed: number, count: number, names: readonly string[]): string[] => {
  const random = seededRandom(41, seed);
  return Array.from({ length: count }, () => names[random.nextBelow(names.length)] ?? '');
};

/** Normal readings of a clinic, one after the other, from some value on shifted by so many spreads. */
function readings(
  seed: number,
  { count = 160, by = ['anna', 'ben', 'chloe'], shiftAt = Infinity, shift = 0, device = 'caliper' },
): StageValue[] {
  const random = seededRandom(47, seed);
  return people(seed, count, by).map((recordedBy, at) => ({
    captureId: `capture-${String(at)}`,
    stageId: `stage-${String(at)}`,
    patientId: `patient-${String(at)}`,
    clinicId: 'north',
    deviceId: device,
    recordedBy,
    recordedAt: new Date(Date.UTC(2027, 0, 1, at)),
    value: normalQuantile((random.nextUint32() + 0.5) / 0x1_0000_0000) + (at >= shiftAt ? shift : 0),
  }));
}

const ofKind = (found: readonly FoundDrift[], kind: string) => found.filter(({ series }) => series.kind === kind);

describe('series of several people', () => {
  it('find a drift that no single person’s readings are long enough to show', () => {
    const [shiftAt, runs] = [75, 100];
    const found = Array.from({ length: runs }, (_, seed) =>
      findDrifts(readings(seed, { count: 115, shiftAt, shift: 2 }), SETTINGS),
    );
    for (const kind of ['clinic-series', 'device-series']) {
      const hits = found.filter((each) => ofKind(each, kind).some(({ drift }) => drift.foundAt >= shiftAt));
      expect(hits.length).toBeGreaterThan(0.9 * runs);
      const delays = hits.map((each) => (ofKind(each, kind)[0]?.drift.foundAt ?? 0) - shiftAt).sort((a, b) => a - b);
      expect(delays[Math.floor(delays.length / 2)]).toBeLessThan(15);
    }
    const own = found.filter((each) => ofKind(each, 'own-series').length > 0);
    expect(own.length).toBeLessThan(0.2 * runs);
  });

  it('give false alarms about as rarely as set', () => {
    const [runs, looked, valuesPerAlarm] = [1_000, 50, 200];
    const alarms = Array.from({ length: runs }, (_, seed) =>
      findDrifts(readings(1_000 + seed, { count: 40 + looked }), { ...SETTINGS, valuesPerAlarm }),
    ).filter((found) => ofKind(found, 'clinic-series').length > 0).length;
    const asSet = (runs * looked) / valuesPerAlarm;
    expect(alarms).toBeGreaterThan(asSet * 0.5);
    expect(alarms).toBeLessThan(asSet * 1.3);
  });

  it('are none of two people, whose chart would be of one of them', () => {
    const values = readings(7, { by: ['anna', 'ben'], shiftAt: 110, shift: 6 });
    const kinds = new Set(findDrifts(values, SETTINGS).map(({ series }) => series.kind));
    expect([...kinds]).toEqual(['own-series']);
  });

  it('follow a device through the clinics, and name when it began', () => {
    const steady = readings(11, { device: 'plate set' });
    const drifting = readings(12, { shiftAt: 120, shift: 4 });
    const values = [...steady, ...drifting.map((each) => ({ ...each, clinicId: null }))].sort(
      (a, b) => a.recordedAt.getTime() - b.recordedAt.getTime(),
    );
    const found = ofKind(findDrifts(values, SETTINGS), 'device-series');
    expect(found.map(({ series }) => series.ownerId)).toEqual(['caliper']);
    const began = found[0]?.since.recordedAt.getTime() ?? 0;
    expect(Math.abs(began - Date.UTC(2027, 0, 1, 120)) / 3_600_000).toBeLessThanOrEqual(3);
  });
});
