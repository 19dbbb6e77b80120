import { serveTasks, type Report } from './serve-tasks.js';
import { TaskCancelledError } from './errors.js';

let remembered: string | null = null;

/** Tasks for the tests of pool and crew. */
serveTasks({
  remember: (part: string) => {
    remembered = part;
    return null;
  },
  recall: () => remembered,
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
