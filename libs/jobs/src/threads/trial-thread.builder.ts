import { serveTasks, type Report } from './serve-tasks.js';
import { TaskCancelledError } from './errors.js';

/** Tasks for the pool's own test. */
serveTasks({
  double: (value: number) => value * 2,
  count: (until: number, report: Report) => {
    for (let number = 1; number <= until; number++) report(number);
    return 'counted';
  },
  refuse: (task: string) => {
    throw new TaskCancelledError(task);
  },
  fail: () => {
    throw new RangeError('out of range');
  },
  crash: () => process.exit(7),
  /** Blocks its thread, as a search does, until the first number of shared memory is no longer 0. */
  waitFor: (memory: SharedArrayBuffer) => {
    Atomics.wait(new Int32Array(memory), 0, 0);
    return 'released';
  },
});
