import { Organisation } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** Project default: in a practice with 50 values a day, one ordinary value is pointed out in about four weeks. */
export const VALUES_PER_FALSE_ALARM = 1_000;

/** The organisation's average run length: of so many ordinary values one is pointed out by chance. */
export async function valuesPerFalseAlarm(tx: EntityManager, organisationId: string): Promise<number> {
  const { settings } = await tx.findOneByOrFail(Organisation, { id: organisationId });
  return settings.valuesPerFalseAlarm ?? VALUES_PER_FALSE_ALARM;
}
