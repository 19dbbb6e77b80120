import type { PracticeOverlay } from '@archwright/measures';
import { MeasurementSettings } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** The catalogue as it ships; a practice's first change is the next version. */
export const SHIPPED_VERSION = 1;

/** The practice's own ranges and limits; null while it has changed none. */
export async function overlayInForce(tx: EntityManager): Promise<Required<PracticeOverlay> | null> {
  const [row] = await tx.find(MeasurementSettings, { order: { version: 'DESC' }, take: 1 });
  return row === undefined ? null : { version: row.version, usual: row.usual, limits: row.limits };
}
