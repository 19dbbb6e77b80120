import { seededRandom } from '@archwright/kernel';
import { fullBits } from '../chain/bits.js';
import { Decoder } from '../shop/decoder.js';
import type { Project } from '../shop/project.js';
import { layOutProject } from '../shop/project-layout.js';
import { WorkloadDecoder } from './decoder.js';
import { layOutWorkload } from './layout.js';
import type { WorkloadProblem } from './model.js';
import { lagAfter } from './tiny-workload.twin.js';

const SLOTS = 400;

/** Activities that each need one place of one resource, some of them in a row. */
function aProject(index: number, most: number): Project {
  const random = seededRandom(20271126, index);
  const capacities = [1 + random.nextBelow(most), 1 + random.nextBelow(most), 1];
  const activities = Array.from({ length: 12 }, () => {
    const resource = random.nextBelow(3);
    return { duration: 1 + random.nextBelow(9), needs: capacities.map((_, at) => (at === resource ? 1 : 0)) };
  });
  const lags = activities.flatMap(({ duration }, from) =>
    random.nextBelow(2) === 0 && from + 1 < activities.length
      ? [{ from, to: from + 1, lag: duration + random.nextBelow(4) }]
      : [],
  );
  return { capacities, activities, lags };
}

/** The same as one job on centres that never close. */
function asWorkload({ capacities, activities, lags }: Project): WorkloadProblem {
  const always = fullBits(SLOTS);
  return {
    slotCount: SLOTS,
    dayOfSlot: new Int32Array(SLOTS),
    centres: capacities.map((capacity, number) => ({
      key: String(number),
      open: always,
      places: Array.from({ length: capacity }, (_, place) => ({ key: `${number}.${place}`, free: always })),
      runSize: null,
      openRuns: [],
    })),
    jobs: [
      {
        key: 'all',
        weight: 1,
        alternatives: [
          {
            key: 'here',
            dueSlot: null,
            operations: activities.map(({ duration, needs }, at) => ({
              key: String(at),
              centre: needs.indexOf(1),
              segments: [{ slots: duration, mode: 'pauses', holdsPlace: true }],
              firstSlot: 0,
              lastSlot: SLOTS,
              endFromSlot: 0,
              runUnits: null,
              current: null,
            })),
            lags: lags.map(({ from, to, lag }) => ({ from, to, anchor: 'start', lo: lagAfter(SLOTS, lag), hi: null })),
          },
        ],
      },
    ],
  };
}

function bothStarts(project: Project, list: Int32Array): [number[], number[]] {
  const order = project.activities.map((_, at) => at);
  const starts = new Int32Array(list.length);
  new Decoder(layOutProject(project, order)).decode(list, starts);
  const decoder = new WorkloadDecoder(layOutWorkload(asWorkload(project)));
  const notBefore = new Int32Array(list.length);
  decoder.decode({ order: list, notBefore, chosen: new Int32Array(1), repairs: new Int32Array(1) });
  return [[...starts], [...decoder.start]];
}

describe('the decoder where everything is always open', () => {
  it('makes the plan of the shop decoder, for any list where each centre has one place', () => {
    for (let index = 0; index < 100; index++) {
      const project = aProject(index, 1);
      const [shop, workload] = bothStarts(project, Int32Array.from(project.activities.keys()));
      expect({ index, starts: workload }).toEqual({ index, starts: shop });
    }
  });

  // Numbers of places can fit where no single place does; in the order of the starts both come to the same.
  it('makes it for lists in the order of their starts where centres have several', () => {
    let different = 0;
    for (let index = 0; index < 100; index++) {
      const project = aProject(index, 3);
      const [first] = bothStarts(project, Int32Array.from(project.activities.keys()));
      const list = Int32Array.from(project.activities.keys()).sort((a, b) => first[a]! - first[b]! || a - b);
      const [shop, workload] = bothStarts(project, list);
      expect({ index, starts: workload }).toEqual({ index, starts: shop });
      if (list.some((id, at) => id !== at)) different++;
    }
    expect(different).toBeGreaterThan(50);
  });
});
