import type { EnterDisturbance } from '@archwright/contracts';
import { Disturbance, LabStep } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { lossOf, type Loss } from './loss.js';
import { requireSubject, type NamedSubject } from './subjects.js';

export interface DisturbanceRecord {
  readonly row: Disturbance;
  /** What was said to be lost; the loss itself may be of nothing by now. */
  readonly what: EnterDisturbance['what'];
  readonly loss: Loss;
  readonly subject: NamedSubject;
}

/** @throws {RecordNotFoundError} for one that is unknown here, or of nothing that the actor's clinics have to do with */
export async function loadDisturbance(
  tx: EntityManager,
  actor: Actor,
  id: string,
  { lock = false }: { readonly lock?: boolean } = {},
): Promise<DisturbanceRecord> {
  const row = await tx.findOne(Disturbance, {
    where: { id },
    ...(lock ? { lock: { mode: 'pessimistic_write' as const } } : {}),
  });
  if (row === null) throw new RecordNotFoundError('disturbance', id);
  const step = row.labStepId === null ? null : await tx.findOneByOrFail(LabStep, { id: row.labStepId });
  const loss = lossOf(row, step);
  const what = loss.what === 'nothing' ? 'lab-step' : loss.what;
  return { row, what, loss, subject: await requireSubject(tx, actor, { what, id: loss.id }) };
}

export const isUndecided = ({ state }: Disturbance): boolean => state === 'open' || state === 'planned';
