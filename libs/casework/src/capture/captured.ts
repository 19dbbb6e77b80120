import {
  measurementByCode,
  subjectOf,
  type CentricRelationRecord,
  type Reading,
  type ReadingValue,
} from '@archwright/measures';
import { Capture, Measurement, Tracing } from '@archwright/records';
import type { Evaluation, NoApex } from '@archwright/tracing';
import { In, LessThanOrEqual, type EntityManager } from 'typeorm';
import type { KeptEntry } from './settle-tracing.js';

/** A reading that counts, and when it was taken. */
interface TimedReading {
  readonly reading: Reading;
  readonly at: Date;
}

export interface CapturedTracing {
  readonly entry: KeptEntry;
  /** Null where findings were typed. */
  readonly evaluation: Evaluation | NoApex | null;
}

/** Everything that was captured in one go at a stage, as it counts now. */
export interface Captured {
  readonly captures: readonly Capture[];
  readonly readings: readonly TimedReading[];
  /** In the order in which they were made. */
  readonly tracings: readonly CapturedTracing[];
  readonly otherCentricRelation: readonly CentricRelationRecord[];
}

/**
 * What counts of several stages, by stage.
 *
 * @param until leaves out what was recorded later
 */
export async function loadCaptured(
  tx: EntityManager,
  stageIds: readonly string[],
  until?: Date,
): Promise<Map<string, Captured>> {
  const where = { stageId: In([...stageIds]) };
  const captures = await tx.find(Capture, {
    where: { ...where, ...(until === undefined ? {} : { recordedAt: LessThanOrEqual(until) }) },
    order: { recordedAt: 'ASC', id: 'ASC' },
  });
  const measurements = await tx.find(Measurement, { where, order: { reading: 'ASC', id: 'ASC' } });
  const tracings = await tx.find(Tracing, { where, order: { attempt: 'ASC' } });
  return new Map(
    stageIds.map((stageId) => {
      const own = captures.filter((each) => each.stageId === stageId);
      return [
        stageId,
        {
          captures: own,
          readings: readingsInForce(own, measurements),
          tracings: own.flatMap(({ id }) =>
            tracings
              .filter((each) => each.captureId === id)
              .map(({ entry, evaluation }) => ({ entry, evaluation }) as CapturedTracing),
          ),
          otherCentricRelation: own.flatMap((each) => each.otherCentricRelation as CentricRelationRecord[]),
        },
      ];
    }),
  );
}

/** For each subject the readings of the last capture that has any. */
function readingsInForce(captures: readonly Capture[], measurements: readonly Measurement[]): TimedReading[] {
  const bySubject = new Map<string, { captureId: string; rows: Measurement[] }>();
  for (const { id } of captures) {
    for (const row of measurements.filter((each) => each.captureId === id)) {
      const subject = subjectOf(readingOf(row));
      const known = bySubject.get(subject);
      if (known?.captureId === id) known.rows.push(row);
      else bySubject.set(subject, { captureId: id, rows: [row] });
    }
  }
  return [...bySubject.values()].flatMap(({ rows }) =>
    rows.map((row) => ({ reading: readingOf(row), at: row.recordedAt })),
  );
}

function readingOf(row: Measurement): Reading {
  const { unit, arch, side, region, method } = row;
  return {
    code: row.code,
    value: valueOf(row),
    ...(unit === null ? {} : { unit }),
    ...(arch === null ? {} : { arch }),
    ...(side === null ? {} : { side }),
    ...(region === null ? {} : { region }),
    ...(method === null ? {} : { method }),
  };
}

function valueOf({ valueNumber, valueText, valueBoolean, code }: Measurement): ReadingValue {
  const value = valueNumber ?? valueText ?? valueBoolean;
  if (value === null) throw new Error(`A measurement of ${code} has no value.`);
  return value;
}

/** The arch that a reading speaks of: as stated, or as its region says; null for the whole mouth. */
export function archOf({ code, arch, region }: Omit<Reading, 'value'>): 'upper' | 'lower' | null {
  if (arch !== undefined) return arch;
  if (region === undefined || measurementByCode(code).regions === undefined) return null;
  return archOfRegion(region);
}

/** Named regions lie in one arch, palate and post-dam in the upper one; the questions of a score lie in none. */
export function archOfRegion(region: string): 'upper' | 'lower' | null {
  if (region.startsWith('question-')) return null;
  return region.startsWith('lower') ? 'lower' : 'upper';
}
