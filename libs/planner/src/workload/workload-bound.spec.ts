import { emptyBits, fullBits, setRange } from '../chain/bits.js';
import { layOutWorkload } from './layout.js';
import type { WorkloadCentre, WorkloadJob, WorkloadProblem } from './model.js';
import { energyLateness, freeTime, preemptiveLateness } from './one-centre-bound.js';
import { workloadBound } from './workload-bound.js';

const SLOTS = 40;
const always = fullBits(SLOTS);

/** Two "days" of twenty slots, open in the first ten. */
function dayHours() {
  const open = emptyBits(SLOTS);
  setRange(open, 0, 9);
  setRange(open, 20, 29);
  return open;
}

const centre = (open = always): WorkloadCentre => ({
  key: 'wax',
  open,
  places: [{ key: 'wax 1', free: always }],
  runSize: null,
  openRuns: [],
});
const job = (key: string, slots: number, dueSlot: number, firstSlot = 0): WorkloadJob => ({
  key,
  weight: 1,
  alternatives: [
    {
      key: 'here',
      dueSlot,
      operations: [
        {
          key: 'work',
          centre: 0,
          segments: [{ slots, mode: 'pauses', holdsPlace: true }],
          firstSlot,
          lastSlot: SLOTS,
          endFromSlot: 0,
          runUnits: null,
          current: null,
        },
      ],
      lags: [],
    },
  ],
});
const problem = (jobs: WorkloadJob[], open = always): WorkloadProblem => ({
  slotCount: SLOTS,
  dayOfSlot: Int32Array.from({ length: SLOTS }, (_, slot) => Math.floor(slot / 20)),
  centres: [centre(open)],
  jobs,
});
const bound = (jobs: WorkloadJob[], open = always) => workloadBound(layOutWorkload(problem(jobs, open)));

describe('lateness that no plan avoids', () => {
  it('is that of each case with an empty laboratory, through closed hours', () => {
    expect(bound([job('a', 12, 10)], dayHours())).toMatchObject({ lateness: 12, by: 'each-job', ofJob: [12] });
  });

  it('counts the work of several cases that have to share one place', () => {
    // Shortest first: ends at 4, 9 and 15 against dues of 5, 5 and 5.
    expect(bound([job('a', 4, 5), job('b', 5, 5), job('c', 6, 5)])).toMatchObject({ lateness: 14, by: 'one-centre' });
  });

  it('waits for work that comes in later, and interrupts for what is shorter', () => {
    const works = [
      { head: 0, slots: 6, dueSlot: 6, weight: 2, sureLateness: 0 },
      { head: 2, slots: 1, dueSlot: 3, weight: 3, sureLateness: 0 },
    ];
    // Ends at 3 and 7 against dues of 3 and 6, each counted with the smaller weight.
    expect(preemptiveLateness(works, freeTime(centre(), SLOTS, true))).toBe(2);
    expect(energyLateness(works, freeTime(centre(), SLOTS, true))).toBe(2);
  });

  it('finds by energy that something is late where the hours do not suffice', () => {
    const free = freeTime(centre(dayHours()), SLOTS, true);
    const works = [6, 6].map((slots) => ({ head: 0, slots, dueSlot: 10, weight: 1, sureLateness: 0 }));
    expect(energyLateness(works, free)).toBe(12);
  });
});
