import { ScreeningNight, enqueueOutbox, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** In UTC, whatever zones the clinics are in: the work takes seconds and waits for nobody. Project default. */
const STARTS_AT_HOUR = 2;

/**
 * Starts the look over all series, once per night.
 *
 * @returns how many were started: one or none
 */
export async function startNight(tx: EntityManager, organisationId: string, now: Date): Promise<number> {
  if (now.getUTCHours() < STARTS_AT_HOUR) return 0;
  const nightOn = now.toISOString().slice(0, 10);
  if (await tx.existsBy(ScreeningNight, { nightOn })) return 0;
  const nightId = uuidv7();
  const started: unknown[] = await tx.query(
    `INSERT INTO screening_night (id, night_on, started_at) VALUES ($1, $2, $3)
     ON CONFLICT (organisation_id, night_on) DO NOTHING RETURNING id`,
    [nightId, nightOn, now],
  );
  if (started.length === 0) return 0;
  await enqueueOutbox(tx, 'screen-series', { organisationId, nightId }, now);
  return 1;
}
