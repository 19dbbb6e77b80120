import {
  Closure,
  CalendarRule,
  Clinic,
  Courier,
  LabStep,
  Laboratory,
  blockTime,
  claim,
  uuidv7,
  type Collision,
} from '@archwright/records';
import type { LocalRule } from '@archwright/calendar';
import type { EntityManager } from 'typeorm';
import { lostRuns, type Loss } from './loss.js';

/**
 * Keeps everybody out of lost time from now on. What is booked in it and did not move stays and is reported.
 *
 * A lost visit closes nothing: its patient's absence was a wish of the plan that replaced it.
 */
export async function closeTime(tx: EntityManager, loss: Loss, now: Date): Promise<readonly Collision[]> {
  switch (loss.what) {
    case 'resource':
      return closeResource(tx, loss, now);
    case 'clinic':
      await insertClosure(tx, loss, { clinicId: loss.id });
      return [];
    case 'work-centre':
      await insertClosure(tx, loss, { workCentreId: loss.id });
      return [];
    case 'laboratory':
      await insertClosure(tx, loss, { laboratoryId: loss.id });
      return [];
    case 'courier':
      await cancelRuns(tx, loss.id, loss);
      return [];
    case 'lab-step':
      await postpone(tx, loss, now);
      return [];
    case 'visit':
      return [];
  }
}

interface Times {
  readonly startMs: number;
  readonly endMs: number;
}

/** Why is the practice's own business: a closure is read by whoever plans. */
const REASON = 'Fell away';

async function insertClosure(
  tx: EntityManager,
  { startMs, endMs }: Times,
  subject: Partial<Pick<Closure, 'resourceId' | 'clinicId' | 'workCentreId' | 'laboratoryId'>>,
): Promise<string> {
  const id = uuidv7();
  await tx.insert(Closure, {
    ...subject,
    id,
    startsAt: new Date(startMs),
    endsAt: new Date(endMs),
    reason: REASON,
  });
  return id;
}

async function closeResource(
  tx: EntityManager,
  loss: Times & { readonly id: string },
  now: Date,
): Promise<Collision[]> {
  const closureId = await insertClosure(tx, loss, { resourceId: loss.id });
  const [row]: { kind: string }[] = await tx.query('SELECT kind FROM resource WHERE id = $1', [loss.id]);
  const isPerson = row?.kind === 'clinician' || row?.kind === 'assistant';
  const purpose = isPerson ? ('absence' as const) : ('closure' as const);
  const times = { resourceId: loss.id, startsAt: new Date(loss.startMs), endsAt: new Date(loss.endMs) };
  return blockTime(tx, [{ ...times, purpose, closureId }], now);
}

/** The runs of a timetable are its recurrence less its exceptions. */
async function cancelRuns(tx: EntityManager, courierId: string, times: Times): Promise<void> {
  const courier = await tx.findOneByOrFail(Courier, { id: courierId });
  const clinic = await tx.findOneByOrFail(Clinic, { id: courier.clinicId });
  const laboratory = await tx.findOneByOrFail(Laboratory, { id: courier.laboratoryId });
  for (const row of await tx.findBy(CalendarRule, { courierId })) {
    const zone = row.direction === 'to-lab' ? clinic.zone : laboratory.zone;
    const rule: LocalRule = {
      zone,
      startsLocal: `${row.startOn}T${row.startsLocal}`,
      minutes: row.minutes,
      rrule: row.rrule,
      exceptLocal: row.exceptLocal,
    };
    const lost = lostRuns(rule, times);
    if (lost.length > 0) await tx.update(CalendarRule, { id: row.id }, { exceptLocal: [...row.exceptLocal, ...lost] });
  }
}

/** Work that is late is planned to be ready when it will be, and keeps its place until then. */
async function postpone(tx: EntityManager, loss: Extract<Loss, { what: 'lab-step' }>, now: Date): Promise<void> {
  const row = await tx.findOneByOrFail(LabStep, { id: loss.id });
  const endsAt = new Date(loss.endMs);
  await tx.update(LabStep, { id: loss.id }, { endsAt, version: row.version + 1 });
  const { placeId } = loss.step;
  if (placeId === null || row.batchId !== null || loss.startMs >= loss.endMs) return;
  const longer = { resourceId: placeId, startsAt: new Date(loss.startMs), endsAt };
  await claim(tx, [{ ...longer, purpose: 'lab', labStepId: loss.id }], now);
}
