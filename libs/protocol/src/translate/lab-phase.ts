import type {
  ChainOperation,
  ChainPhase as ProblemPhase,
  LabAlternative,
  PhaseArc,
  PhaseNode,
} from '@archwright/planner';
import type { ChainLabStep, ChainPhase } from '../case-chain.js';
import { NoLaboratoryError } from '../errors.js';
import type { StepPredecessor, TimeSpan } from '../path-schema.js';
import type { LaboratorySnapshot, WorkCentreSnapshot } from '../snapshot.js';
import { SLOT_MINUTES, type PlanningAxis } from './axis.js';
import type { PhaseToPlan, StepToPlan } from './remaining.js';
import type { PlanRequest } from './request.js';
import { betweenBlocks, timeTaken } from './home-visits.js';
import { boundsAfter, earliestTable, tablesOf, type DayCounting, type Limits } from './spans.js';
import type { Transport } from './transport.js';

export interface PhaseContext {
  readonly axis: PlanningAxis;
  readonly request: PlanRequest;
  readonly transport: Transport;
  /** Index of each visit of the problem by stage code. */
  readonly visitIndex: ReadonlyMap<string, number>;
  /** Slots of the way to and from each visit of the problem; 0 at the clinic. */
  readonly wayOf: (visit: number) => number;
  /** Zone in which days are counted. */
  readonly zone: string;
}

interface Window {
  fromMs: number;
  untilMs: number | null;
}

/**
 * The planner's phase for laboratory work still to be made, once per laboratory that has all its work centres.
 *
 * @throws {NoLaboratoryError} when no accepted laboratory can make it
 */
export function toProblemPhase(context: PhaseContext, toPlan: PhaseToPlan): ProblemPhase {
  const { request, visitIndex } = context;
  const { phase, steps } = toPlan;
  const accepted = request.practice.laboratories.filter((each) => request.wishes.laboratoryIds.includes(each.id));
  const needed = [...new Set(steps.map((each) => each.step.workCentre))];
  const lacking = (laboratory: LaboratorySnapshot): string[] => {
    const has = (code: string) => laboratory.workCentres.some((each) => each.code === code && each.places.length > 0);
    const centres = needed.filter((code) => !has(code));
    const reachable = request.wishes.clinicIds.some((clinic) => context.transport.connects(clinic, laboratory));
    return reachable ? centres : [...centres, 'a courier to and from an accepted clinic'];
  };
  const able = accepted.filter((each) => lacking(each).length === 0);
  if (able.length === 0) {
    const missing = accepted.map((each) => ({ laboratory: each.name, lacks: lacking(each) }));
    throw new NoLaboratoryError(phase.code, missing);
  }
  return {
    key: phase.code,
    after: visitIndex.get(phase.afterStage) ?? null,
    before: visitIndex.get(phase.beforeStage) ?? 0,
    labs: able.map((laboratory) => new LabWork(context, toPlan, laboratory).alternative()),
  };
}

/** One phase in one laboratory. */
class LabWork {
  private readonly arcs: PhaseArc[] = [];
  private readonly windows: Window[];
  private readonly counting: DayCounting;
  private readonly phase: ChainPhase;
  private readonly steps: readonly StepToPlan[];
  private readonly afterIndex: number | null;

  constructor(
    private readonly context: PhaseContext,
    private readonly toPlan: PhaseToPlan,
    private readonly laboratory: LaboratorySnapshot,
  ) {
    this.phase = toPlan.phase;
    this.steps = toPlan.steps;
    this.windows = this.steps.map(() => ({ fromMs: context.axis.originMs, untilMs: null }));
    this.counting = { zone: context.zone, labDays: laboratory.labDays };
    this.afterIndex = context.visitIndex.get(this.phase.afterStage) ?? null;
  }

  alternative(): LabAlternative {
    this.steps.forEach(({ step }, index) => {
      for (const before of step.after) this.follow(before, index);
    });
    this.steps.forEach(({ step }, index) => {
      if (!this.steps.some((other) => other.step.after.some((each) => each.code === step.code)))
        this.bringHome(step, index);
    });
    for (const lag of this.context.request.chain.lags) {
      const from = this.indexOf(lag.from);
      if (from !== null && lag.to === this.phase.beforeStage) {
        this.limit(lag.code, from, 'before', overridden(this.context.request, lag.code, lag), 'end');
      }
    }
    return {
      lab: this.laboratory.id,
      operations: this.steps.map((each, index) => this.operation(each, index)),
      arcs: this.arcs,
    };
  }

  private indexOf(code: string): number | null {
    const index = this.steps.findIndex((each) => each.step.code === code);
    return index < 0 ? null : index;
  }

  private follow(before: StepPredecessor, index: number): void {
    const limits = overridden(this.context.request, before.lag, before);
    const key = before.lag ?? `${before.code}-to-${this.steps[index]?.step.code ?? ''}`;
    if (before.code === this.phase.afterStage) {
      this.receive(index);
      this.limitFromVisit(key, index, limits);
      return;
    }
    const from = this.indexOf(before.code);
    if (from !== null) {
      // Without a wait of its own a step still never starts before what it is made from.
      const least = limits.min ?? {
        amount: 0,
        unit: 'minutes' as const,
        firmness: 'hard' as const,
        standing: 'derived' as const,
        source: 'order of work',
      };
      this.limit(key, from, index, { ...limits, min: least }, 'end');
      return;
    }
    const done = this.context.request.fixedSteps.find((each) => each.code === before.code);
    if (done !== undefined) this.narrow(index, boundsAfter(limits, done.endMs, this.counting));
  }

  /** Work starts when it has come in from the visit; its turnaround counts from its acceptance. */
  private receive(index: number): void {
    const { axis, request, transport } = this.context;
    if (this.afterIndex !== null) {
      if (this.phase.outward === 'file') {
        this.arcs.push({ ...this.arc('files', 'after', index), lo: axis.slots(), hi: null, byClinic: null });
        return;
      }
      const byClinic = new Map(
        request.practice.clinics.map(
          ({ id }) => [id, { lo: transport.arrivals('to-lab', id, this.laboratory), hi: null }] as const,
        ),
      );
      this.arcs.push({ ...this.arc('courier-to-lab', 'after', index), lo: null, hi: null, byClinic });
      return;
    }
    const arrivedMs = this.pastArrivalMs();
    if (arrivedMs !== null) this.narrow(index, { fromMs: arrivedMs, untilMs: null });
  }

  /** When the work of a visit that has taken place is at the laboratory; null when nothing is known of that visit. */
  private pastArrivalMs(): number | null {
    const { axis, request, transport } = this.context;
    const visit = request.fixedStages.find((each) => each.code === this.phase.afterStage);
    if (visit === undefined) return null;
    const { endMs } = timeTaken(visit);
    if (this.phase.outward === 'file') return endMs;
    return transport.first('to-lab', visit.clinicId, this.laboratory, endMs)?.arrivesAtMs ?? axis.window.endMs;
  }

  private limitFromVisit(key: string, index: number, limits: Limits): void {
    if (this.afterIndex !== null) {
      this.limit(key, 'after', index, limits, 'end');
      return;
    }
    const visit = this.context.request.fixedStages.find((each) => each.code === this.phase.afterStage);
    if (visit !== undefined) this.narrow(index, boundsAfter(limits, visit.endMs, this.counting));
  }

  private bringHome(step: ChainLabStep, index: number): void {
    const { request, transport } = this.context;
    const byClinic = new Map(
      request.practice.clinics.map(
        ({ id }) => [id, { lo: transport.arrivals('to-clinic', id, this.laboratory), hi: null }] as const,
      ),
    );
    this.arcs.push({ ...this.arc('courier-to-clinic', index, 'before'), lo: null, hi: null, byClinic });
    if (this.toPlan.isWhole) this.keepTurnaround(step, index);
  }

  /**
   * The last step is not finished before the agreed turnaround: lab working days from acceptance. What it does by itself
   * (a soak) may have begun earlier.
   */
  private keepTurnaround(step: ChainLabStep, index: number): void {
    const { axis, request, transport } = this.context;
    const { turnaround } = this.phase;
    const amount = request.rush ? turnaround.rushDays : turnaround.usualMinDays;
    if (amount === 0) return;
    const byItself = step.segments.reduce((sum, each) => sum + (each.kind === 'hands-on' ? 0 : each.minutes), 0);
    const early = Math.ceil(byItself / SLOT_MINUTES);
    const span = {
      amount,
      unit: 'lab-working-days',
      firmness: 'typical',
      standing: turnaround.standing,
      source: turnaround.source,
    } as const;
    if (this.afterIndex === null) {
      const arrivedMs = this.pastArrivalMs();
      if (arrivedMs === null) return;
      const { fromMs } = boundsAfter({ min: span, max: null }, arrivedMs, this.counting);
      this.narrow(index, { fromMs: fromMs - byItself * 60_000, untilMs: null });
      return;
    }
    const byClinic = new Map(
      request.practice.clinics.map(({ id }) => {
        const arrivals =
          this.phase.outward === 'file' ? axis.slots() : transport.arrivals('to-lab', id, this.laboratory);
        return [id, { lo: this.readyBy(arrivals, span, early), hi: null }] as const;
      }),
    );
    this.arcs.push({ ...this.arc('turnaround', 'after', index), lo: null, hi: null, byClinic });
  }

  /** Earliest start of the last step by end of the visit, `early` slots before the turnaround from its arrival is over. */
  private readyBy(arrivals: Int32Array, span: TimeSpan, early: number): Int32Array {
    const { axis } = this.context;
    const ready = earliestTable(axis, span, this.counting);
    const key = `turnaround ${String(early)} ${String(span.amount)} ${JSON.stringify(this.counting)}`;
    return axis.onceOf(arrivals, key, () =>
      arrivals.map((slot) => (slot >= axis.count ? axis.count : Math.max(0, (ready[slot] ?? 0) - early))),
    );
  }

  private limit(key: string, from: PhaseNode, to: PhaseNode, limits: Limits, anchor: 'start' | 'end'): void {
    if (limits.min === null && limits.max === null) return;
    const ways = {
      after: from === 'after' ? this.wayOf('after') : 0,
      before: to === 'before' ? this.wayOf('before') : 0,
    };
    const { axis } = this.context;
    const tables = betweenBlocks(axis, tablesOf(axis, limits, this.counting), ways);
    this.arcs.push({ key, from, to, anchor, ...tables, byClinic: null });
  }

  private wayOf(side: 'after' | 'before'): number {
    const { visitIndex, wayOf } = this.context;
    const visit = visitIndex.get(side === 'after' ? this.phase.afterStage : this.phase.beforeStage);
    return visit === undefined ? 0 : wayOf(visit);
  }

  private arc(kind: string, from: PhaseNode, to: PhaseNode) {
    return { key: `${this.phase.code}-${kind}`, from, to, anchor: 'end' as const };
  }

  private narrow(index: number, bounds: Window): void {
    const window = this.windows[index];
    if (window === undefined) return;
    window.fromMs = Math.max(window.fromMs, bounds.fromMs);
    if (bounds.untilMs !== null) window.untilMs = Math.min(window.untilMs ?? Infinity, bounds.untilMs);
  }

  private operation({ step, kept }: StepToPlan, index: number): ChainOperation {
    const { axis } = this.context;
    const centre = this.laboratory.workCentres.find((each) => each.code === step.workCentre);
    if (centre === undefined)
      throw new Error(`work centre ${step.workCentre} was there when the laboratory was chosen`);
    if (kept !== null && kept.laboratoryId === this.laboratory.id) return keptOperation(axis, step, centre, kept);
    const { fromMs, untilMs } = this.windows[index] ?? { fromMs: axis.originMs, untilMs: null };
    const holds = step.segments.some((each) => each.holdsPlace);
    return {
      key: step.code,
      centre: centre.id,
      centreOpen: axis.open(centre.working, centre.closures),
      segments: step.segments.map((each) => ({
        slots: Math.ceil(each.minutes / SLOT_MINUTES),
        mode: each.kind === 'hands-on' ? 'pauses' : 'runs-on',
        holdsPlace: each.holdsPlace,
      })),
      places: holds ? centre.places.map((each) => ({ key: each.id, free: axis.notBusy(each.busy) })) : [],
      batches: centre.openBatches
        .filter((each) => each.kind === step.batch && each.startMs >= axis.originMs && each.endMs <= axis.window.endMs)
        .map((each) => ({
          key: each.id,
          place: each.placeId,
          startSlot: axis.slotUntil(each.startMs),
          endSlot: axis.slotFrom(each.endMs),
        })),
      allowed: axis.range(axis.slotFrom(fromMs), untilMs === null ? axis.count - 1 : axis.slotUntil(untilMs)),
    };
  }
}

/** A step that keeps its booked time: one start, and the end that was booked. */
function keptOperation(
  axis: PlanningAxis,
  step: ChainLabStep,
  centre: WorkCentreSnapshot,
  kept: NonNullable<StepToPlan['kept']>,
): ChainOperation {
  const slot = axis.slotUntil(kept.startMs);
  const free = axis.full();
  return {
    key: step.code,
    centre: centre.id,
    centreOpen: free,
    segments: [{ slots: axis.slotFrom(kept.endMs) - slot, mode: 'runs-on', holdsPlace: kept.placeId !== null }],
    places: kept.placeId === null ? [] : [{ key: kept.placeId, free }],
    batches: [],
    allowed: axis.range(slot, slot),
  };
}

/** The limits in force: those of a material record or an agreed relaxation before the path's. */
export function overridden({ lagOverrides }: PlanRequest, code: string | null, { min, max }: Limits): Limits {
  const given = code === null ? undefined : lagOverrides[code];
  return { min: given?.min === undefined ? min : given.min, max: given?.max === undefined ? max : given.max };
}
