import { courierRuns, earliestArrivalMs, nextPickUp } from './courier.js';
import { toInstantMs } from './zone.js';

const ZONE = 'Europe/Berlin';
const at = (local: string): number => toInstantMs(local, ZONE);

describe('couriers', () => {
  it('run to their timetable in exact time', () => {
    // Under way over the night in which the clock is set forward: eight hours end at 7:00, not at 6:00.
    const nightly = { zone: ZONE, startsLocal: '2026-03-27T22:00', minutes: 480, rrule: 'FREQ=DAILY' };
    expect(courierRuns(nightly, { startMs: at('2026-03-28T22:00'), endMs: at('2026-03-29T22:00') })).toEqual([
      { departsAtMs: at('2026-03-28T22:00'), arrivesAtMs: at('2026-03-29T07:00') },
    ]);
  });

  it('pick up at the first departure at or after an instant', () => {
    const departures = [10, 20, 30];
    expect([0, 10, 11, 30, 31].map((ms) => nextPickUp(departures, ms))).toEqual([10, 10, 20, 30, undefined]);
  });

  it('may overtake: the earliest arrival is not that of the next departure', () => {
    const runs = [
      { departsAtMs: 10, arrivesAtMs: 100 },
      { departsAtMs: 20, arrivesAtMs: 50 },
      { departsAtMs: 60, arrivesAtMs: 120 },
    ];
    expect([0, 20, 21, 61].map((ms) => earliestArrivalMs(runs, ms))).toEqual([50, 50, 120, undefined]);
  });
});
