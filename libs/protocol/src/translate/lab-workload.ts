import {
  nextBit,
  previousBit,
  type ArcTables,
  type ChainOperation,
  type LabAlternative,
  type PhaseArc,
  type WorkloadAlternative,
  type WorkloadLag,
  type WorkloadOperation,
} from '@archwright/planner';
import type { WorkCentreSnapshot } from '../snapshot.js';
import type { PlanningAxis } from './axis.js';
import type { CaseWork, WorkloadRequest } from './workload-request.js';

/** Start and end of a fixed visit, the way to a patient at home included. */
export interface Around {
  readonly startSlot: number;
  readonly endSlot: number;
  readonly clinicId: string;
}

/** One stretch of work in one laboratory, between two fixed visits. */
export class LabWorkload {
  readonly laboratoryId: string;
  readonly steps: readonly string[];
  private readonly order: readonly number[];
  private readonly first: number[];
  private readonly last: number[];
  private readonly endFrom: number[];
  private dueSlot: number | null = null;
  private readonly lags: WorkloadLag[] = [];

  constructor(
    private readonly work: CaseWork,
    private readonly lab: LabAlternative,
    private readonly centres: readonly WorkCentreSnapshot[],
    private readonly machines: WorkloadRequest['machines'],
    private readonly axis: PlanningAxis,
    private readonly visits: { readonly after: Around; readonly before: Around },
  ) {
    this.laboratoryId = lab.lab;
    this.order = inOrderOfWork(lab);
    this.steps = this.order.map((index) => lab.operations[index]?.key ?? '');
    this.first = lab.operations.map(({ allowed }) => (allowed === null ? 0 : orEnd(nextBit(allowed, 0), axis.count)));
    this.last = lab.operations.map(({ allowed }) =>
      allowed === null ? axis.count : previousBit(allowed, axis.count - 1),
    );
    this.endFrom = lab.operations.map(() => 0);
    for (const arc of lab.arcs) this.bound(arc);
  }

  alternative(): WorkloadAlternative {
    const operations = this.order.map((index) => this.operation(index));
    return { key: this.lab.lab, dueSlot: this.dueSlot, operations, lags: this.lags };
  }

  private bound(arc: PhaseArc): void {
    const { from, to } = arc;
    const { after, before } = this.visits;
    if (from === 'after' && typeof to === 'number') {
      const tables = inClinic(arc, after.clinicId);
      this.startBetween(to, tables, Math.max(0, arc.anchor === 'end' ? after.endSlot : after.startSlot));
    } else if (typeof from === 'number' && to === 'before') {
      this.reach(from, inClinic(arc, before.clinicId), before.startSlot);
    } else if (typeof from === 'number' && typeof to === 'number') {
      const [one, other] = [this.order.indexOf(from), this.order.indexOf(to)];
      this.lags.push({ from: one, to: other, anchor: arc.anchor, lo: arc.lo, hi: arc.hi });
    }
  }

  private startBetween(operation: number, { lo, hi }: ArcTables, anchor: number): void {
    const at = Math.min(anchor, this.axis.count);
    this.first[operation] = Math.max(this.first[operation] ?? 0, lo?.[at] ?? 0);
    this.last[operation] = Math.min(this.last[operation] ?? this.axis.count, hi?.[at] ?? this.axis.count);
  }

  /** Read the other way round: until when it may end to be there for the visit, and from when on so as not to be too old. */
  private reach(operation: number, { lo, hi }: ArcTables, visit: number): void {
    if (visit >= this.axis.count) return;
    if (lo !== null) {
      const latest = lo.findLastIndex((slot) => slot <= visit);
      this.dueSlot = Math.min(this.dueSlot ?? this.axis.count, Math.max(0, latest));
    }
    const earliest = hi?.findIndex((slot) => slot >= visit) ?? 0;
    this.endFrom[operation] = Math.max(this.endFrom[operation] ?? 0, earliest);
  }

  private operation(index: number): WorkloadOperation {
    const operation = this.lab.operations[index];
    if (operation === undefined) throw new Error('an order names operations that there are');
    const centre = this.centres.findIndex(({ id }) => id === operation.centre);
    const movable = this.work.movable.find(({ code }) => code === operation.key);
    const startSlot = movable === undefined ? -1 : this.axis.slotFrom(movable.startMs);
    const placed = {
      key: operation.key,
      centre,
      firstSlot: this.first[index] ?? 0,
      lastSlot: this.last[index] ?? this.axis.count,
      endFromSlot: this.endFrom[index] ?? 0,
    };
    if (movable === undefined) return { ...placed, ...asItStands(operation, placed.firstSlot) };
    return {
      ...placed,
      segments: operation.segments,
      runUnits: this.unitsOf(operation),
      // What should have begun already stands nowhere any more.
      current: startSlot < 0 ? null : { startSlot, place: movable.placeId },
    };
  }

  /** One unit for each arch, such as a flask. */
  private unitsOf({ key, centre }: ChainOperation): number | null {
    const step = this.work.chain.steps.find(({ code }) => code === key);
    const isShared = this.machines.some(({ workCentreId }) => workCentreId === centre);
    if (step === undefined || step.batch === null || !isShared) return null;
    return this.work.progress.steps.findLast(({ code }) => code === key)?.arches.length ?? step.arches.length;
  }
}

/** A step that keeps its time: its place is taken already, so that here it takes none. */
function asItStands(
  { segments }: ChainOperation,
  startSlot: number,
): Pick<WorkloadOperation, 'segments' | 'runUnits' | 'current'> {
  return {
    segments: segments.map(({ slots }) => ({ slots, mode: 'runs-on', holdsPlace: false })),
    runUnits: null,
    current: { startSlot, place: null },
  };
}

const orEnd = (slot: number, end: number): number => (slot < 0 ? end : slot);

const inClinic = ({ byClinic, lo, hi }: PhaseArc, clinicId: string): ArcTables => byClinic?.get(clinicId) ?? { lo, hi };

/** Operations by number, each after those that it waits for. */
function inOrderOfWork({ operations, arcs }: LabAlternative): number[] {
  const order: number[] = [];
  const add = (index: number): void => {
    if (order.includes(index)) return;
    for (const { from, to } of arcs) if (to === index && typeof from === 'number') add(from);
    order.push(index);
  };
  operations.forEach((_, index) => {
    add(index);
  });
  return order;
}
