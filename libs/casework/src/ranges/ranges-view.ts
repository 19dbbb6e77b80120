import type { MeasurementRangesView } from '@archwright/contracts';
import { JUDGEMENT_NOTE, RULE_LIMITS, USUAL_SUBJECTS } from '@archwright/measures';
import { MeasurementSettings, UserAccount } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { SHIPPED_VERSION } from './overlay-in-force.js';

const VERSIONS_SHOWN = 50;

/** Usual ranges and limits as shipped and as the practice changed them, with what it had before. */
export async function viewMeasurementRanges(tx: EntityManager): Promise<MeasurementRangesView> {
  const rows = await tx.find(MeasurementSettings, { order: { version: 'DESC' }, take: VERSIONS_SHOWN });
  const people = await tx.findBy(UserAccount, { id: In([...new Set(rows.map(({ changedBy }) => changedBy))]) });
  const [inForce] = rows;
  return {
    version: inForce?.version ?? SHIPPED_VERSION,
    usual: USUAL_SUBJECTS.map(({ key, measurement, group, shipped }) => ({
      key,
      name: measurement.name,
      group,
      unit: measurement.unit,
      plausible: { ...measurement.plausible },
      shipped: shipped === null ? null : { ...shipped },
      own: inForce?.usual[key] ?? null,
      source: measurement.source.text,
      standing: measurement.source.standing,
    })),
    limits: RULE_LIMITS.map(({ code, meaning, unit, value, adjustable, source }) => ({
      code,
      meaning,
      unit,
      shipped: value,
      own: inForce?.limits[code] ?? null,
      adjustable: adjustable === null ? null : { ...adjustable },
      source: source.text,
      standing: source.standing,
    })),
    history: rows.map(({ version, usual, limits, reason, changedAt, changedBy }) => ({
      version,
      usual,
      limits,
      reason,
      changedAt: changedAt.toISOString(),
      changedBy: people.find(({ id }) => id === changedBy)?.name ?? '(erased)',
    })),
    note: JUDGEMENT_NOTE,
  };
}
