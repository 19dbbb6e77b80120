import { courierRuns, type CourierRun, type LocalRule } from '@archwright/calendar';
import type { CourierSnapshot, LaboratorySnapshot, PracticeSnapshot } from '../snapshot.js';
import type { PlanningAxis } from './axis.js';

export type Direction = 'to-lab' | 'to-clinic';

/** One way between a clinic and a laboratory, with the courier that goes it. */
export interface Leg extends CourierRun {
  /** Null when the work is carried over under one roof or sent as a file. */
  readonly courierId: string | null;
}

const ruleOf = ({ toLab, toClinic }: CourierSnapshot, direction: Direction): LocalRule =>
  direction === 'to-lab' ? toLab : toClinic;

const PAST_DAYS_MS = 21 * 86_400_000;

/** All runs between clinics and laboratories, expanded once. */
export class Transport {
  private readonly runs = new Map<string, Leg[]>();

  constructor(
    private readonly practice: PracticeSnapshot,
    private readonly axis: PlanningAxis,
  ) {}

  /** Whether work can get there and back at all. */
  connects(clinicId: string, laboratory: LaboratorySnapshot): boolean {
    return (
      laboratory.sameRoofClinicIds.includes(clinicId) ||
      this.practice.couriers.some((each) => each.clinicId === clinicId && each.laboratoryId === laboratory.id)
    );
  }

  /** The way that arrives first of those that leave at or after `readyMs`; null when none leaves any more. */
  first(direction: Direction, clinicId: string, laboratory: LaboratorySnapshot, readyMs: number): Leg | null {
    if (laboratory.sameRoofClinicIds.includes(clinicId)) return atOnce(readyMs);
    let best: Leg | null = null;
    for (const run of this.runsOf(direction, clinicId, laboratory.id)) {
      if (run.departsAtMs >= readyMs && (best === null || run.arrivesAtMs < best.arrivesAtMs)) best = run;
    }
    return best;
  }

  /** Earliest arrival by the slot at which the work is ready. */
  arrivals(direction: Direction, clinicId: string, laboratory: LaboratorySnapshot): Int32Array {
    const { axis } = this;
    if (laboratory.sameRoofClinicIds.includes(clinicId)) return axis.slots();
    const rules = this.couriersOf(clinicId, laboratory.id).map((each) => ruleOf(each, direction));
    return axis.once(`arrivals ${JSON.stringify(rules)}`, () => {
      const runs = this.runsOf(direction, clinicId, laboratory.id);
      const slots = new Int32Array(axis.count + 1);
      let next = runs.length - 1;
      let earliest = axis.count;
      for (let slot = axis.count; slot >= 0; slot--) {
        for (let run = runs[next]; run !== undefined && run.departsAtMs >= axis.msOf(slot); run = runs[--next]) {
          earliest = Math.min(earliest, axis.slotFrom(run.arrivesAtMs));
        }
        slots[slot] = earliest;
      }
      return slots;
    });
  }

  private couriersOf(clinicId: string, laboratoryId: string): CourierSnapshot[] {
    return this.practice.couriers.filter((each) => each.clinicId === clinicId && each.laboratoryId === laboratoryId);
  }

  private runsOf(direction: Direction, clinicId: string, laboratoryId: string): Leg[] {
    const key = `${direction} ${clinicId} ${laboratoryId}`;
    let runs = this.runs.get(key);
    if (runs === undefined) {
      const { startMs, endMs } = this.axis.window;
      runs = this.couriersOf(clinicId, laboratoryId)
        .flatMap((courier) =>
          // Work handed over before now may still wait for its run.
          courierRuns(ruleOf(courier, direction), {
            startMs: startMs - PAST_DAYS_MS,
            endMs,
          }).map((run) => ({ ...run, courierId: courier.id })),
        )
        .sort((a, b) => a.departsAtMs - b.departsAtMs);
      this.runs.set(key, runs);
    }
    return runs;
  }
}

export const atOnce = (ms: number): Leg => ({ courierId: null, departsAtMs: ms, arrivesAtMs: ms });
