import { seededRandom } from '@archwright/kernel';
import { WorkloadSearch, setRange, workloadFaults, type WorkloadJob, type WorkloadProblem } from '@archwright/planner';
import { table } from './figures.js';

const SIZES = [20, 60, 200];
const EPOCHS = 40;
const WEEKS = 6;
const DAY_SLOTS = 288;
const SLOTS = WEEKS * 7 * DAY_SLOTS;
/** 7:30 to 16:30. */
const [OPENS, CLOSES] = [90, 198];
/** Hands-on minutes and the place's own minutes after them, along the way of a denture through a laboratory. */
const STEPS = [
  { centre: 0, handsOn: 30, set: 60 },
  { centre: 1, handsOn: 30, set: 30 },
  { centre: 2, handsOn: 150, set: 0 },
  { centre: 3, handsOn: 45, set: 0 },
  { centre: 4, handsOn: 40, set: 60 },
  { centre: 5, handsOn: 0, set: 540 },
  { centre: 6, handsOn: 90, set: 0 },
];
/** Places of each work centre, for 25 jobs in hand; more jobs have more. */
const PLACES = [1, 1, 2, 1, 1, 1, 1];

/** Jobs drawn at random that come in within five days, none of them planned yet, each due two to eight days later. */
function laboratory(jobCount: number): WorkloadProblem {
  const random = seededRandom(20271127, jobCount);
  const open = new Uint32Array(SLOTS >> 5);
  const always = new Uint32Array(SLOTS >> 5).fill(0xffffffff);
  for (let day = 0; day < WEEKS * 7; day++) {
    if (day % 7 < 5) setRange(open, day * DAY_SLOTS + OPENS, day * DAY_SLOTS + CLOSES - 1);
  }
  const after = Int32Array.from({ length: SLOTS + 1 }, (_, slot) => slot);
  const factor = Math.max(1, Math.round(jobCount / 25));
  const job = (number: number): WorkloadJob => {
    const first = random.nextBelow(5 * DAY_SLOTS);
    const from = random.nextBelow(3);
    const steps = STEPS.slice(from, from + 3 + random.nextBelow(STEPS.length - from - 2));
    return {
      key: String(number),
      weight: 1,
      alternatives: [
        {
          key: 'here',
          dueSlot: first + (2 + random.nextBelow(7)) * DAY_SLOTS,
          operations: steps.map(({ centre, handsOn, set }, index) => ({
            key: String(index),
            centre,
            segments: [
              ...(handsOn > 0 ? [{ slots: handsOn / 5, mode: 'pauses' as const, holdsPlace: true }] : []),
              ...(set > 0 ? [{ slots: set / 5, mode: 'runs-on' as const, holdsPlace: true }] : []),
            ],
            firstSlot: first,
            lastSlot: SLOTS,
            endFromSlot: 0,
            runUnits: centre === 5 ? 2 : null,
            current: null,
          })),
          lags: steps.slice(1).map((_, at) => ({ from: at, to: at + 1, anchor: 'end', lo: after, hi: null })),
        },
      ],
    };
  };
  return {
    slotCount: SLOTS,
    dayOfSlot: Int32Array.from({ length: SLOTS }, (_, slot) => Math.floor(slot / DAY_SLOTS)),
    centres: PLACES.map((places, centre) => ({
      key: String(centre),
      open,
      places: Array.from({ length: places * factor }, (_, place) => ({
        key: `${String(centre)}.${String(place)}`,
        free: always,
      })),
      runSize: centre === 5 ? 8 : null,
      openRuns: [],
    })),
    jobs: Array.from({ length: jobCount }, (_, number) => job(number)),
  };
}

/** Work of many cases, from one seed and a fixed number of epochs: the figures but for the times are the same everywhere. */
export function benchWorkload(): Promise<string> {
  const rows = SIZES.map((size) => {
    const problem = laboratory(size);
    const search = new WorkloadSearch(problem, { seed: 1, streams: 2, aim: 'fewest-moves' });
    const first = search.bestObjective;
    const before = process.cpuUsage();
    for (let epoch = 0; epoch < EPOCHS; epoch++) search.runEpoch();
    const { user, system } = process.cpuUsage(before);
    const { best, bound } = search;
    const faults = workloadFaults(problem, best);
    if (faults.length > 0) throw new Error(`A plan breaks rules: ${faults.slice(0, 3).join('; ')}`);
    const operations = problem.jobs.reduce(
      (sum, { alternatives }) => sum + (alternatives[0]?.operations.length ?? 0),
      0,
    );
    return [
      `${String(size)} cases`,
      ...[
        operations,
        first.lateness,
        best.objective.lateness,
        bound.lateness,
        first.overload,
        best.objective.overload,
        Math.round((user + system) / 1000 / EPOCHS),
      ].map(String),
    ];
  });
  const heads = ['work', 'steps', 'late first', 'late best', 'bound', 'over first', 'over best', 'ms an epoch'];
  return Promise.resolve(table(heads, rows));
}
