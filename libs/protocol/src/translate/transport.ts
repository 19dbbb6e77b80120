import { courierRuns, type CourierRun } from '@archwright/calendar';
import type { ArcTables } from '@archwright/planner';
import type { LaboratorySnapshot, PracticeSnapshot } from '../snapshot.js';
import type { PlanningAxis } from './axis.js';

export type Direction = 'to-lab' | 'to-clinic';

/** One way between a clinic and a laboratory, with the courier that goes it. */
export interface Leg extends CourierRun {
  /** Null when the work is carried over under one roof or sent as a file. */
  readonly courierId: string | null;
}

const PAST_DAYS_MS = 21 * 86_400_000;

/** All runs between clinics and laboratories, expanded once. */
export class Transport {
  private readonly runs = new Map<string, Leg[]>();
  private readonly tables = new Map<string, ArcTables>();

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
  table(direction: Direction, clinicId: string, laboratory: LaboratorySnapshot): ArcTables {
    const key = `${direction} ${clinicId} ${laboratory.id}`;
    const known = this.tables.get(key);
    if (known !== undefined) return known;
    const { axis } = this;
    const lo = new Int32Array(axis.count + 1);
    if (laboratory.sameRoofClinicIds.includes(clinicId)) lo.forEach((_, slot) => (lo[slot] = slot));
    else {
      const runs = this.runsOf(direction, clinicId, laboratory.id);
      let next = runs.length - 1;
      let earliest = axis.count;
      for (let slot = axis.count; slot >= 0; slot--) {
        for (let run = runs[next]; run !== undefined && run.departsAtMs >= axis.msOf(slot); run = runs[--next]) {
          earliest = Math.min(earliest, axis.slotFrom(run.arrivesAtMs));
        }
        lo[slot] = earliest;
      }
    }
    const tables = { lo, hi: null };
    this.tables.set(key, tables);
    return tables;
  }

  private runsOf(direction: Direction, clinicId: string, laboratoryId: string): Leg[] {
    const key = `${direction} ${clinicId} ${laboratoryId}`;
    let runs = this.runs.get(key);
    if (runs === undefined) {
      const { startMs, endMs } = this.axis.window;
      runs = this.practice.couriers
        .filter((each) => each.clinicId === clinicId && each.laboratoryId === laboratoryId)
        .flatMap((courier) =>
          // Work handed over before now may still wait for its run.
          courierRuns(direction === 'to-lab' ? courier.toLab : courier.toClinic, {
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
