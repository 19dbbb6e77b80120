import {
  Closure,
  CalendarRule,
  Clinic,
  Courier,
  LabStep,
  Laboratory,
  claim,
  uuidv7,
  type Collision,
} from '@archwright/records';
import { normalise, subtract, type LocalRule } from '@archwright/calendar';
import type { EntityManager } from 'typeorm';
import { blockClosed } from '../setup/block-closed.js';
import { lostRuns, type Loss } from './loss.js';

/** What is booked into lost time and did not move. */
export type InTheWay = Pick<Collision, 'appointmentId' | 'labStepId'>;

/**
 * Keeps everybody out of lost time from now on. What is booked in it and did not move stays and is reported.
 *
 * A lost visit closes nothing: its patient's absence was a wish of the plan that replaced it.
 *
 * @param closureId the closure that is in force already; null when there is none yet
 */
export async function closeTime(
  tx: EntityManager,
  { loss, closureId }: { readonly loss: Loss; readonly closureId: string | null },
  now: Date,
): Promise<readonly InTheWay[]> {
  switch (loss.what) {
    case 'resource':
    case 'clinic': {
      const subject = loss.what === 'clinic' ? { clinicId: loss.id } : { resourceId: loss.id };
      const { what: kind, id, startMs, endMs } = loss;
      const inForce = closureId ?? (await insertClosure(tx, loss, subject));
      // One that was in force takes what has become free, too.
      return blockClosed(tx, { closureId: inForce, of: { kind, id }, startMs, endMs }, now);
    }
    case 'work-centre':
      if (closureId === null) await insertClosure(tx, loss, { workCentreId: loss.id });
      return [];
    case 'laboratory':
      if (closureId === null) await insertClosure(tx, loss, { laboratoryId: loss.id });
      return [];
    case 'courier':
      await cancelRuns(tx, loss.id, loss);
      return [];
    case 'lab-step':
      return postpone(tx, loss, now);
    case 'visit':
    case 'nothing':
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

/**
 * Work that is late is planned to be ready when it will be, and keeps its place until then where the place is free. What
 * is booked there meanwhile stays and is reported.
 */
async function postpone(
  tx: EntityManager,
  loss: Extract<Loss, { what: 'lab-step' }>,
  now: Date,
): Promise<readonly InTheWay[]> {
  const { id, startMs, endMs, step } = loss;
  const row = await tx.findOneByOrFail(LabStep, { id });
  await tx.update(LabStep, { id }, { endsAt: new Date(endMs), version: row.version + 1 });
  const { placeId } = step;
  if (placeId === null || row.batchId !== null || startMs >= endMs) return [];
  const taken = await takenBy(tx, { resourceId: placeId, startMs, endMs }, now);
  const free = subtract(
    [{ startMs, endMs }],
    normalise(taken.map(({ startsAt, endsAt }) => intervalOf(startsAt, endsAt))),
  );
  await claim(
    tx,
    free.map((part) => ({
      resourceId: placeId,
      startsAt: new Date(part.startMs),
      endsAt: new Date(part.endMs),
      purpose: 'lab',
      labStepId: id,
    })),
    now,
  );
  return taken.filter(({ labStepId }) => labStepId !== id);
}

/** What is booked or held at `now`; whoever takes more of it meanwhile makes the claim fail. */
function takenBy(
  tx: EntityManager,
  { resourceId, startMs, endMs }: Times & { readonly resourceId: string },
  now: Date,
): Promise<(InTheWay & { readonly startsAt: Date; readonly endsAt: Date })[]> {
  return tx.query(
    `SELECT starts_at AS "startsAt", ends_at AS "endsAt", appointment_id AS "appointmentId", lab_step_id AS "labStepId"
     FROM occupancy WHERE resource_id = $1 AND starts_at < $3 AND ends_at > $2
       AND (held_until IS NULL OR held_until > $4)`,
    [resourceId, new Date(startMs), new Date(endMs), now],
  );
}

const intervalOf = (startsAt: Date, endsAt: Date): Times => ({ startMs: startsAt.getTime(), endMs: endsAt.getTime() });
