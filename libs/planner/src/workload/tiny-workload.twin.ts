import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { emptyBits, setBit } from '../chain/bits.js';
import type { WorkloadAlternative, WorkloadCentre, WorkloadLag, WorkloadProblem } from './model.js';

const SLOTS = 10;

/** A lag table: `least` slots after the anchor, or before `most` slots after it. */
export function lagAfter(slotCount: number, slots: number): Int32Array {
  return Int32Array.from({ length: slotCount + 1 }, (_, slot) => Math.min(slotCount, slot + slots));
}

function someBits(random: SeededRandom, share: number) {
  const bits = emptyBits(SLOTS);
  for (let slot = 0; slot < SLOTS; slot++) if (random.nextBelow(10) < share) setBit(bits, slot);
  return bits;
}

/** Up to three operations in up to two jobs on two centres with closed hours, taken places, waits, runs and a choice. */
export function tinyWorkload(index: number): WorkloadProblem {
  const random = seededRandom(20271125, index);
  const centres = [0, 1].map((number): WorkloadCentre => {
    const sharesRuns = number === 1 && random.nextBelow(3) === 0;
    return {
      key: `centre ${number}`,
      open: someBits(random, 8),
      places: Array.from({ length: 1 + random.nextBelow(2) }, (_, place) => ({
        key: `place ${number}.${place}`,
        free: someBits(random, 9),
      })),
      runSize: sharesRuns ? 2 : null,
      openRuns: [],
    };
  });
  const alternative = (key: string, count: number): WorkloadAlternative => {
    const operations = Array.from({ length: count }, (_, operation) => {
      const centre = random.nextBelow(2);
      const isShared = centres[centre]!.runSize !== null;
      const segments = isShared
        ? [{ slots: 2, mode: 'runs-on' as const, holdsPlace: true }]
        : Array.from({ length: 1 + random.nextBelow(2) }, () => ({
            slots: 1 + random.nextBelow(2),
            mode: random.nextBelow(3) === 0 ? ('runs-on' as const) : ('pauses' as const),
            holdsPlace: random.nextBelow(5) > 0,
          }));
      return {
        key: `${key} ${operation}`,
        centre,
        segments,
        firstSlot: random.nextBelow(3),
        lastSlot: random.nextBelow(3) === 0 ? 3 + random.nextBelow(4) : SLOTS - 1,
        endFromSlot: random.nextBelow(4) === 0 ? 3 : 0,
        runUnits: isShared ? 1 : null,
        current: random.nextBelow(2) === 0 ? { startSlot: random.nextBelow(SLOTS), place: null } : null,
      };
    });
    const lags = operations.slice(1).map((_, from): WorkloadLag => ({
      from,
      to: from + 1,
      anchor: random.nextBelow(4) === 0 ? 'start' : 'end',
      lo: lagAfter(SLOTS, random.nextBelow(2)),
      hi: random.nextBelow(3) === 0 ? lagAfter(SLOTS, 1 + random.nextBelow(2)) : null,
    }));
    return { key, dueSlot: random.nextBelow(4) === 0 ? null : 3 + random.nextBelow(5), operations, lags };
  };
  const counts = [[1], [2], [1, 1], [2, 1], [3], [1, 1, 1]][random.nextBelow(6)]!;
  return {
    slotCount: SLOTS,
    dayOfSlot: Int32Array.from({ length: SLOTS }, (_, slot) => 100 + Math.floor(slot / 5)),
    centres,
    jobs: counts.map((count, job) => ({
      key: `job ${job}`,
      weight: 1 + random.nextBelow(3),
      alternatives: [
        alternative(`job ${job}`, count),
        ...(count === 1 && random.nextBelow(3) === 0 ? [alternative(`job ${job} elsewhere`, 1)] : []),
      ],
    })),
  };
}
