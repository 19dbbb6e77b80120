import type { EnterDisturbance } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Appointment, Disturbance, LabStep, enqueueOutbox, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { WrongStateError } from '../errors.js';
import { requireSubject } from './subjects.js';

/** A longer stretch is a change of the practice and not a disturbance of it. Project default. */
const MOST_DAYS = 92;
const DAY_MS = 86_400_000;
const GRID_MS = 300_000;

const COLUMN: Readonly<Record<EnterDisturbance['what'], keyof Disturbance>> = {
  resource: 'resourceId',
  clinic: 'clinicId',
  'work-centre': 'workCentreId',
  laboratory: 'laboratoryId',
  courier: 'courierId',
  'lab-step': 'labStepId',
  visit: 'appointmentId',
};

/**
 * Says that something falls away. Nothing moves and nothing is blocked yet: who is affected can be seen, and plans are
 * looked for.
 *
 * @returns its id
 * @throws {RecordNotFoundError} for what is not there or not of the actor's clinics
 * @throws {WrongStateError} for a visit or work that is over
 */
export async function enterDisturbance(
  tx: EntityManager,
  actor: Actor,
  body: EnterDisturbance,
  now: Date,
): Promise<string> {
  await requireSubject(tx, actor, body);
  return noteDisturbance(tx, actor, body, now);
}

/** For whoever has seen to it that the actor may say this of that. */
export async function noteDisturbance(
  tx: EntityManager,
  actor: Actor,
  { what, id: subjectId, startsAt, endsAt, reason }: EnterDisturbance,
  now: Date,
): Promise<string> {
  const enteredBy = personOf(actor, 'What falls away is entered by a person.');
  const times = requireToCome(onGrid(startsAt, endsAt), now);
  if (what === 'visit') await requireVisitToCome(tx, subjectId, times);
  if (what === 'lab-step') await requireLate(tx, subjectId, times);
  return insertDisturbance(
    tx,
    { ...actor, userId: enteredBy },
    { ...times, what, subjectId, reason, closureId: null },
    now,
  );
}

export interface DisturbanceEntry {
  readonly what: EnterDisturbance['what'];
  readonly subjectId: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly reason: string;
  /** The closure that it comes of; null when a person said so. */
  readonly closureId: string | null;
}

/** Keeps it and has plans looked for. */
export async function insertDisturbance(
  tx: EntityManager,
  { organisationId, userId }: Actor,
  { what, subjectId, ...entry }: DisturbanceEntry,
  now: Date,
): Promise<string> {
  const id = uuidv7();
  const row = { ...entry, id, [COLUMN[what]]: subjectId, state: 'open' as const, enteredAt: now, enteredBy: userId };
  await tx.insert(Disturbance, row);
  await askForRepairs(tx, id, organisationId, now);
  await recordAudit(tx, {
    actorId: userId,
    action: 'enter-disturbance',
    subjectKind: 'disturbance',
    subjectId: id,
    details: { what, of: subjectId },
    at: now,
  });
  return id;
}

export async function askForRepairs(
  tx: EntityManager,
  disturbanceId: string,
  organisationId: string,
  now: Date,
): Promise<void> {
  await enqueueOutbox(tx, 'repair-disturbance', { organisationId, disturbanceId }, now);
}

/** Rounded outward to the five minutes in which time is booked. */
function onGrid(startsAt: string, endsAt: string): Times {
  return {
    startsAt: new Date(Math.floor(Date.parse(startsAt) / GRID_MS) * GRID_MS),
    endsAt: new Date(Math.ceil(Date.parse(endsAt) / GRID_MS) * GRID_MS),
  };
}

interface Times {
  readonly startsAt: Date;
  readonly endsAt: Date;
}

function requireToCome({ startsAt, endsAt }: Times, now: Date): Times {
  const lastMs = Math.max(startsAt.getTime(), now.getTime()) + MOST_DAYS * DAY_MS;
  if (endsAt > startsAt && endsAt > now && endsAt.getTime() <= lastMs) return { startsAt, endsAt };
  throw new RequestInvalidError([
    {
      path: 'endsAt',
      problem: `is ${endsAt.toISOString()}`,
      accepted: `after startsAt and after ${now.toISOString()}, at most ${String(MOST_DAYS)} days later`,
    },
  ]);
}

async function requireVisitToCome(tx: EntityManager, id: string, { endsAt }: Times): Promise<void> {
  const visit = await tx.findOneByOrFail(Appointment, { id });
  if (visit.state !== 'booked' && visit.state !== 'missed') {
    throw new WrongStateError('The visit', visit.state, 'booked, or missed');
  }
  if (endsAt >= visit.endsAt) return;
  throw new RequestInvalidError([
    { path: 'endsAt', problem: 'is before the end of the visit', accepted: `${visit.endsAt.toISOString()} or later` },
  ]);
}

async function requireLate(tx: EntityManager, id: string, times: Times): Promise<void> {
  const { state, laboratoryId, endsAt } = await tx.findOneByOrFail(LabStep, { id });
  const isPlanned = ['planned', 'ready', 'started', 'paused'].includes(state) && laboratoryId !== null;
  if (!isPlanned || endsAt === null) {
    throw new WrongStateError('The laboratory step', state, 'planned, ready, started or paused');
  }
  if (times.endsAt > endsAt) return;
  throw new RequestInvalidError([
    { path: 'endsAt', problem: 'is no later than planned', accepted: `after ${endsAt.toISOString()}` },
  ]);
}
