import type { ScreenSeriesPayload } from '@archwright/contracts';
import { ScreeningNight } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { keepDrifts } from './drifts.js';
import { valuesPerFalseAlarm } from './false-alarms.js';
import { findRises } from './remake-rises.js';
import { compareLaboratories } from './remake-shares.js';
import { loadStageValues } from './stage-values.js';
import { subjectKey, type Subject } from './subject.js';

/**
 * Looks along every series up to the night and at the remakes of the laboratories. Safe to run twice: a night that has
 * finished is left alone, and what was found before is not kept again.
 */
export async function screenNight(
  tx: EntityManager,
  { organisationId, nightId }: ScreenSeriesPayload,
  now: Date,
): Promise<void> {
  const night = await tx.findOne(ScreeningNight, { where: { id: nightId }, lock: { mode: 'pessimistic_write' } });
  if (night === null || night.finishedAt !== null) return;
  const valuesPerAlarm = await valuesPerFalseAlarm(tx, organisationId);
  for (const subject of await subjectsUntil(tx, night.startedAt)) {
    const values = await loadStageValues(tx, subjectKey(subject), night.startedAt);
    await keepDrifts(tx, subject, values, { valuesPerAlarm, now });
  }
  await compareLaboratories(tx, night.nightOn, valuesPerAlarm, now);
  await findRises(tx, night.nightOn, valuesPerAlarm, now);
  await tx.update(ScreeningNight, { id: nightId }, { finishedAt: now });
}

function subjectsUntil(tx: EntityManager, until: Date): Promise<Subject[]> {
  return tx.query(
    `SELECT DISTINCT ON (subject) code, arch, side, region, method FROM stage_value WHERE recorded_at <= $1
     ORDER BY subject`,
    [until],
  );
}
