import { CalendarNumberError } from './errors.js';
import { machineRuns } from './machine-runs.js';

describe('machine runs', () => {
  it('count a part-filled batch as a whole run', () => {
    // A nine-hour curing cycle, six flasks to a tank.
    expect(machineRuns(14, 6, 540)).toEqual({ runs: 3, machineMinutes: 27 * 60 });
    expect(machineRuns(12, 6, 540)).toEqual({ runs: 2, machineMinutes: 18 * 60 });
    expect(machineRuns(0, 6, 540)).toEqual({ runs: 0, machineMinutes: 0 });
  });

  it('refuse a batch of nothing', () => {
    expect(() => machineRuns(1, 0, 540)).toThrow(CalendarNumberError);
  });
});
