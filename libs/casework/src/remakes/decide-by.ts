import { positionOf, stepIsToCome } from '@archwright/protocol';
import type { EntityManager } from 'typeorm';
import type { StageRecord } from '../capture/stage-record.js';
import { visitOfStage } from '../capture/stage-visit.js';
import type { Remake } from './remake.js';

/** The next booked thing that would be done for nothing: laboratory work or a visit after the point gone back to. */
export async function decideBy(
  tx: EntityManager,
  { chain, rows }: StageRecord,
  { returnTo }: Remake,
  now: Date,
): Promise<Date | null> {
  const from = positionOf(chain, returnTo);
  const steps = rows.steps.filter((row) => stepIsToCome(row.state) && positionOf(chain, row.code) >= from);
  const stages = rows.stages.filter(
    (row) => (row.state === 'planned' || row.state === 'ready') && positionOf(chain, row.code) > from,
  );
  const starts = steps.flatMap(({ startsAt }) => startsAt ?? []);
  for (const { id } of stages) {
    const visit = await visitOfStage(tx, id);
    if (visit !== null) starts.push(visit.startsAt);
  }
  return starts.filter((start) => start > now).sort((a, b) => a.getTime() - b.getTime())[0] ?? null;
}
