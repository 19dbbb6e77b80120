import { nextBit } from '../chain/bits.js';
import { NoRoomAtCentreError, RunTooSmallError, UnorderedWorkError } from './errors.js';
import type { WorkloadJob, WorkloadOperation, WorkloadProblem } from './model.js';
import { shapeOf, type Shape } from './shape.js';

/** An operation by its number, over all alternatives of all jobs. */
export interface LaidOperation {
  readonly id: number;
  readonly job: number;
  readonly alternative: number;
  /** Index within its alternative. */
  readonly index: number;
  readonly centre: number;
  readonly shape: Shape;
  readonly first: number;
  readonly last: number;
  /** Units of a shared run; 0 when it runs alone. */
  readonly units: number;
  readonly holdsPlace: boolean;
  /** Start in the plan in force, -1 when it is not in it. */
  readonly currentStart: number;
  /** Number of its place there, -1 when it has none. */
  readonly currentPlace: number;
  readonly before: readonly LaidLag[];
  /** Numbers of the operations that wait for it. */
  readonly after: readonly number[];
}

/** A wait seen from the operation that has to wait. */
export interface LaidLag {
  readonly from: number;
  readonly atEnd: boolean;
  readonly lo: Int32Array | null;
  readonly hi: Int32Array | null;
}

/** A problem with numbers instead of keys, and its calendars as tables. */
export interface WorkloadLayout {
  readonly problem: WorkloadProblem;
  readonly slotCount: number;
  readonly operations: readonly LaidOperation[];
  /** Numbers of the operations of each alternative of each job. */
  readonly ofJob: readonly (readonly (readonly number[])[])[];
  /** Number of the first place of each centre, and behind the last. */
  readonly placesFrom: Int32Array;
  /** First open slot at or after each slot by centre; `slotCount + 1` when there is none. */
  readonly nextOpen: readonly Int32Array[];
}

/**
 * @throws {UnorderedWorkError} when a wait runs against the order of its operations
 * @throws {NoRoomAtCentreError} when an operation fits nowhere
 * @throws {RunTooSmallError} when an operation takes more than a whole run
 */
export function layOutWorkload(problem: WorkloadProblem): WorkloadLayout {
  const { slotCount, centres, jobs } = problem;
  const placesFrom = new Int32Array(centres.length + 1);
  centres.forEach(({ places }, centre) => (placesFrom[centre + 1] = placesFrom[centre]! + places.length));
  const layout = {
    problem,
    slotCount,
    operations: [] as LaidOperation[],
    ofJob: [] as number[][][],
    placesFrom,
    nextOpen: centres.map(({ open }) => nextOpenOf(open, slotCount)),
  };
  const shapes = new Map<string, Shape>();
  const shapeFor = ({ centre, segments }: WorkloadOperation): Shape => {
    const key = JSON.stringify([centre, segments]);
    const shape = shapes.get(key) ?? shapeOf(centres[centre]!, segments, slotCount);
    shapes.set(key, shape);
    return shape;
  };
  jobs.forEach((job, number) => {
    layout.ofJob.push(
      job.alternatives.map((_, alternative) => layOutAlternative(layout, job, number, alternative, shapeFor)),
    );
  });
  return layout;
}

function layOutAlternative(
  layout: Pick<WorkloadLayout, 'problem' | 'placesFrom' | 'slotCount'> & { operations: LaidOperation[] },
  job: WorkloadJob,
  jobNumber: number,
  alternative: number,
  shapeFor: (operation: WorkloadOperation) => Shape,
): number[] {
  const { problem, placesFrom, slotCount, operations } = layout;
  const { operations: given, lags } = job.alternatives[alternative]!;
  const base = operations.length;
  const backward = lags.find(({ from, to }) => from >= to);
  if (backward !== undefined) throw new UnorderedWorkError(job.key, backward.to, backward.from);
  return given.map((operation, index) => {
    const centre = problem.centres[operation.centre]!;
    const shape = shapeFor(operation);
    const holdsPlace = shape.held.length > 0;
    if ((holdsPlace && centre.places.length === 0) || !shape.end.some((end) => end <= slotCount)) {
      throw new NoRoomAtCentreError(job.key, operation.key, centre.key);
    }
    const shares = operation.runUnits !== null && centre.runSize !== null && shape.isWhole;
    if (shares && operation.runUnits > centre.runSize) {
      throw new RunTooSmallError(job.key, operation.key, operation.runUnits, centre.runSize);
    }
    const place = centre.places.findIndex(({ key }) => key === operation.current?.place);
    operations.push({
      id: base + index,
      job: jobNumber,
      alternative,
      index,
      centre: operation.centre,
      shape,
      first: firstStart(operation, shape, slotCount),
      last: operation.lastSlot,
      units: shares ? operation.runUnits : 0,
      holdsPlace,
      currentStart: operation.current?.startSlot ?? -1,
      currentPlace: place < 0 ? -1 : placesFrom[operation.centre]! + place,
      before: lags
        .filter(({ to }) => to === index)
        .map(({ from, anchor, lo, hi }) => ({ from: base + from, atEnd: anchor === 'end', lo, hi })),
      after: lags.filter(({ from }) => from === index).map(({ to }) => base + to),
    });
    return base + index;
  });
}

/** The first start with which it ends late enough for what comes after it. */
function firstStart({ firstSlot, endFromSlot }: WorkloadOperation, { end }: Shape, slotCount: number): number {
  let start = Math.max(0, firstSlot);
  if (endFromSlot <= 0) return start;
  while (start < slotCount && (end[start]! > slotCount || end[start]! < endFromSlot)) start++;
  return start;
}

function nextOpenOf(open: Uint32Array, slotCount: number): Int32Array {
  const next = new Int32Array(slotCount + 2).fill(slotCount + 1);
  for (let slot = nextBit(open, 0), from = 0; slot >= 0 && slot < slotCount; slot = nextBit(open, slot + 1)) {
    next.fill(slot, from, slot + 1);
    from = slot + 1;
  }
  return next;
}
