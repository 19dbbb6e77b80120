import type { MachineShop } from './machine-shop.js';

/**
 * A machine shop as flat arrays.
 *
 * Every job has a slot of its own before its first operation, and one more stands behind the last job. Such a slot ends
 * at 0 and has no tail, so that `id - 1` and `id + 1` are the neighbours in the job without a question; id 0 also serves
 * as nobody before and after on a machine.
 */
export interface ShopLayout {
  readonly machineCount: number;
  readonly jobCount: number;
  /** Ids run from 1 to `size - 2`, with the slots of the jobs among them. */
  readonly size: number;
  /** Ids of all operations, job by job. */
  readonly operations: Int32Array;
  /** Id of each job's slot; its operations follow. One entry more than there are jobs. */
  readonly slotOfJob: Int32Array;
  /** Job of an id. */
  readonly job: Int32Array;
  /** `[id * machineCount + machine]`: duration, -1 where the machine may not do it. */
  readonly durationOn: Int32Array;
  /** Machines that may do an id: `choices[choicesFrom[id] .. choicesFrom[id + 1])`. */
  readonly choicesFrom: Int32Array;
  readonly choices: Int32Array;
  readonly isFlexible: boolean;
}

export function layOut({ machineCount, jobs }: MachineShop): ShopLayout {
  const operationCount = jobs.reduce((sum, operations) => sum + operations.length, 0);
  const size = operationCount + jobs.length + 1;
  const operations = new Int32Array(operationCount);
  const slotOfJob = new Int32Array(jobs.length + 1);
  const job = new Int32Array(size);
  const durationOn = new Int32Array(size * machineCount).fill(-1);
  const choicesFrom = new Int32Array(size + 1);
  const choices: number[] = [];
  let id = 0;
  let count = 0;
  jobs.forEach((ownOperations, index) => {
    slotOfJob[index] = id;
    job[id] = index;
    choicesFrom[id++] = choices.length;
    for (const ownChoices of ownOperations) {
      operations[count++] = id;
      job[id] = index;
      choicesFrom[id] = choices.length;
      for (const { machine, duration } of ownChoices) {
        choices.push(machine);
        durationOn[id * machineCount + machine] = duration;
      }
      id++;
    }
  });
  slotOfJob[jobs.length] = id;
  choicesFrom.fill(choices.length, id);
  return {
    machineCount,
    jobCount: jobs.length,
    size,
    operations,
    slotOfJob,
    job,
    durationOn,
    choicesFrom,
    choices: Int32Array.from(choices),
    isFlexible: choices.length > operationCount,
  };
}
