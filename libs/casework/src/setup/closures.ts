import { addDays, startOfDayMs, toInstantMs, toLocal } from '@archwright/calendar';
import type { SetupEntry } from '@archwright/contracts';
import { Closure, release } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import { noteClosure, withdrawNoted } from '../disturbances/note-closure.js';
import { RecordNotFoundError } from '../errors.js';
import { blockClosed } from './block-closed.js';
import { SetupRefusedError, type Hand, type Keeper, type RecordOf } from './keeper.js';

type ClosureSubject = RecordOf<'closure'>['of'];

const COLUMNS = {
  clinic: 'clinicId',
  laboratory: 'laboratoryId',
  'work-centre': 'workCentreId',
  resource: 'resourceId',
} as const satisfies Record<ClosureSubject['kind'], keyof Closure>;

/** Each day costs a lock of the database for each chair; who is away for longer is taken out of use. */
const LONGEST_DAYS = 366;

/** Closures and absences that people entered; those of a calendar feed follow their feed. */
export const closureKeeper: Keeper<'closure'> = {
  table: 'closure',
  fixed: ['of'],
  retires: false,

  async list(tx) {
    const zones = await subjectZones(tx);
    const rows = await tx.find(Closure, { where: { importedCalendarId: IsNull() }, order: { id: 'ASC' } });
    return rows.map((row) => {
      const of = subjectOf(row);
      const times = timesOf(row, zones.get(of.id) ?? 'UTC');
      return { id: row.id, version: row.version, isRetired: false, record: { kind: 'closure', of, ...times } };
    });
  },

  async insert(tx, id, record, hand) {
    const { of, reason } = record;
    await tx.insert(Closure, { id, [COLUMNS[of.kind]]: of.id, reason, ...(await storedTimes(tx, record)) });
    await comeInForce(tx, id, record, hand);
  },

  async replace(tx, id, record, hand) {
    await tx.update(Closure, { id }, { reason: record.reason, ...(await storedTimes(tx, record)) });
    await withdrawNoted(tx, hand.actor, [id], hand.now);
    await comeInForce(tx, id, record, hand);
  },
};

/** Ends a closure as if it had never been; time that it kept free can be booked again. */
export async function removeClosure(
  tx: EntityManager,
  { actor, now }: Hand,
  { id, record }: SetupEntry,
): Promise<void> {
  if (record.kind !== 'closure') throw new RecordNotFoundError('closure', id);
  await withdrawNoted(tx, actor, [id], now);
  await release(tx, { closureIds: [id] });
  await tx.delete(Closure, { id });
}

function subjectOf(row: Closure): ClosureSubject {
  for (const [kind, column] of Object.entries(COLUMNS) as [ClosureSubject['kind'], keyof Closure][]) {
    const id = row[column];
    if (typeof id === 'string') return { kind, id };
  }
  throw new Error(`Closure ${row.id} is of nothing, which the database refuses.`);
}

/** Zone of whatever can be closed, by its id; of a person who works at several clinics that of the first. */
async function subjectZones(tx: EntityManager): Promise<Map<string, string>> {
  const rows: { id: string; zone: string }[] = await tx.query(
    `SELECT id, zone FROM clinic UNION ALL SELECT id, zone FROM laboratory
     UNION ALL SELECT w.id, l.zone FROM work_centre w JOIN laboratory l ON l.id = w.laboratory_id
     UNION ALL SELECT p.id, l.zone FROM bench_place p JOIN work_centre w ON w.id = p.work_centre_id
       JOIN laboratory l ON l.id = w.laboratory_id
     UNION ALL SELECT h.id, c.zone FROM chair h JOIN clinic c ON c.id = h.clinic_id
     UNION ALL SELECT k.id, c.zone FROM kit k JOIN clinic c ON c.id = k.clinic_id
     UNION ALL (SELECT DISTINCT ON (p.practitioner_id) p.practitioner_id, c.zone FROM practitioner_clinic p
       JOIN clinic c ON c.id = p.clinic_id ORDER BY p.practitioner_id, p.id)`,
  );
  return new Map(rows.map(({ id, zone }) => [id, zone]));
}

type Times = Pick<RecordOf<'closure'>, 'fromOn' | 'lastOn' | 'fromLocal' | 'untilLocal' | 'reason'>;

function timesOf({ fromOn, untilOn, startsAt, endsAt, reason }: Closure, zone: string): Times {
  if (fromOn !== null && untilOn !== null)
    return { fromOn, lastOn: addDays(untilOn, -1), fromLocal: null, untilLocal: null, reason };
  const [firstDay = '', fromLocal = ''] = toLocal(startsAt?.getTime() ?? 0, zone).split('T');
  const [lastDay = '', untilLocal = ''] = toLocal(endsAt?.getTime() ?? 0, zone).split('T');
  // An end at midnight is the end of the day before.
  return untilLocal === '00:00'
    ? { fromOn: firstDay, lastOn: addDays(lastDay, -1), fromLocal, untilLocal: null, reason }
    : { fromOn: firstDay, lastOn: lastDay, fromLocal, untilLocal, reason };
}

async function storedTimes(
  tx: EntityManager,
  record: RecordOf<'closure'>,
): Promise<Pick<Closure, 'fromOn' | 'untilOn' | 'startsAt' | 'endsAt'>> {
  const { fromOn, lastOn, fromLocal, untilLocal } = record;
  if (addDays(fromOn, LONGEST_DAYS) < lastOn)
    throw new SetupRefusedError(
      'A closure is longer than a year.',
      'a last date within a year, or taking it out of use',
    );
  if (fromLocal === null && untilLocal === null)
    return { fromOn, untilOn: addDays(lastOn, 1), startsAt: null, endsAt: null };
  const { startMs, endMs } = await instantsOf(tx, record);
  return { fromOn: null, untilOn: null, startsAt: new Date(startMs), endsAt: new Date(endMs) };
}

async function instantsOf(
  tx: EntityManager,
  { of, fromOn, lastOn, fromLocal, untilLocal }: RecordOf<'closure'>,
): Promise<{ startMs: number; endMs: number }> {
  const zone = (await subjectZones(tx)).get(of.id);
  if (zone === undefined) throw new RecordNotFoundError(of.kind, of.id);
  return {
    startMs: fromLocal === null ? startOfDayMs(fromOn, zone) : toInstantMs(`${fromOn}T${fromLocal}`, zone),
    endMs: untilLocal === null ? startOfDayMs(addDays(lastOn, 1), zone) : toInstantMs(`${lastOn}T${untilLocal}`, zone),
  };
}

/**
 * Takes the time of what is closed, so that nothing is booked into it, and has repairs looked for where something is. A
 * laboratory's places are left alone: what sets or cures there runs on behind closed doors, and hands-on work is kept out
 * by its calendar.
 */
async function comeInForce(
  tx: EntityManager,
  closureId: string,
  record: RecordOf<'closure'>,
  { actor, now }: Hand,
): Promise<void> {
  const { kind, id } = record.of;
  const times = await instantsOf(tx, record);
  if (kind === 'clinic' || kind === 'resource') await blockClosed(tx, { ...times, closureId, of: { kind, id } }, now);
  await noteClosure(tx, actor, { ...times, closureId, what: kind, id, reason: record.reason }, now);
}
