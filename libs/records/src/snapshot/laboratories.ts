import { addDays, courierRuns, normalise, toLocal, type Interval, type LocalRule } from '@archwright/calendar';
import type { CourierSnapshot, LaboratorySnapshot, OpenBatchSnapshot, WorkCentreSnapshot } from '@archwright/protocol';
import { In, IsNull, type EntityManager } from 'typeorm';
import { BenchPlace, Courier, Laboratory, WorkCentre } from '../laboratory/laboratory.entity.js';
import type { Clinic } from '../clinic/clinic.entity.js';
import type { BusyTimes } from './busy.js';
import { inUse } from './clinics.js';
import { toLocalRule, type PracticeHours } from './hours.js';
import type { SnapshotScope } from './snapshot-scope.js';

const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7];
/** Work handed over before the window may still wait for its run. */
const RUNS_BEFORE_MS = 21 * 86_400_000;

export interface LaboratoryRows {
  readonly laboratories: readonly Laboratory[];
  readonly workCentres: readonly WorkCentre[];
  readonly places: readonly BenchPlace[];
  readonly couriers: readonly Courier[];
  readonly openBatches: readonly OpenBatchSnapshot[];
}

export async function loadLaboratoryRows(tx: EntityManager, scope: SnapshotScope, now: Date): Promise<LaboratoryRows> {
  const { laboratoryIds, clinicIds } = scope;
  const laboratories = await tx.find(Laboratory, {
    where: laboratoryIds === undefined ? {} : { id: In(laboratoryIds) },
    order: { name: 'ASC', id: 'ASC' },
  });
  const inThem = { laboratoryId: In(laboratories.map(({ id }) => id)) };
  const workCentres = await tx.find(WorkCentre, { where: inThem, order: { code: 'ASC' } });
  const places = await tx
    .createQueryBuilder(BenchPlace, 'p')
    .where({ workCentreId: In(workCentres.map(({ id }) => id)) })
    .andWhere(inUse('p'), { now })
    .orderBy('p.number')
    .getMany();
  const running = { ...inThem, clinicId: In(clinicIds), retiredAt: IsNull() };
  const couriers = await tx.find(Courier, { where: running, order: { id: 'ASC' } });
  const openBatches = await loadOpenBatches(
    tx,
    places.map(({ id }) => id),
    scope,
  );
  return { laboratories, workCentres, places, couriers, openBatches };
}

/** Runs to come with room for more; room that only the cases left out take up counts as free. */
async function loadOpenBatches(
  tx: EntityManager,
  placeIds: readonly string[],
  { fromMs, untilMs, withoutCaseIds = [] }: SnapshotScope,
): Promise<OpenBatchSnapshot[]> {
  const rows: (Omit<OpenBatchSnapshot, 'startMs' | 'endMs'> & { startsAt: Date; endsAt: Date })[] = await tx.query(
    `SELECT b.id, b.place_id AS "placeId", b.kind, b.starts_at AS "startsAt", b.ends_at AS "endsAt" FROM batch b
     WHERE b.place_id = ANY ($1::uuid[]) AND b.starts_at >= $2 AND b.starts_at < $3 AND b.used < b.size + (
       SELECT coalesce(sum(m.units), 0) FROM batch_member m JOIN lab_step s ON s.id = m.lab_step_id
       WHERE m.batch_id = b.id AND s.case_id = ANY ($4::uuid[]))
     ORDER BY b.starts_at, b.id`,
    [placeIds, new Date(fromMs), new Date(untilMs), withoutCaseIds],
  );
  return rows.map(({ startsAt, endsAt, ...batch }) => ({
    ...batch,
    startMs: startsAt.getTime(),
    endMs: endsAt.getTime(),
  }));
}

interface LaboratoryContext {
  readonly rows: LaboratoryRows;
  readonly hours: PracticeHours;
  readonly busy: BusyTimes;
}

export function toLaboratorySnapshot(laboratory: Laboratory, context: LaboratoryContext): LaboratorySnapshot {
  const { rows, hours } = context;
  const { id, name, zone, cutOffLocal, closedWeekdays } = laboratory;
  return {
    id,
    name,
    labDays: {
      zone,
      cutOffLocal,
      openWeekdays: WEEKDAYS.filter((day) => !closedWeekdays.includes(day)),
      closedOn: closedDates(hours, laboratory),
    },
    sameRoofClinicIds: rows.couriers
      .filter((courier) => courier.laboratoryId === id && isUnderOneRoof(courier, hours))
      .map(({ clinicId }) => clinicId),
    workCentres: rows.workCentres
      .filter((centre) => centre.laboratoryId === id)
      .map((centre) => toWorkCentreSnapshot(centre, laboratory, context)),
  };
}

/** A work centre keeps the laboratory's hours unless it has its own; the laboratory's closures hold for all. */
function toWorkCentreSnapshot(
  { id, code }: WorkCentre,
  laboratory: Laboratory,
  { rows, hours, busy }: LaboratoryContext,
): WorkCentreSnapshot {
  const { zone } = laboratory;
  const own = hours.rulesOf('workCentreId', id, zone);
  const places = rows.places.filter(({ workCentreId }) => workCentreId === id);
  return {
    id,
    code,
    working: own.length > 0 ? own : hours.rulesOf('laboratoryId', laboratory.id, zone),
    closures: [...hours.closuresOf('laboratoryId', laboratory.id, zone), ...hours.closuresOf('workCentreId', id, zone)],
    places: places.map((place) => ({
      id: place.id,
      label: place.label,
      busy: normalise([...(busy.get(place.id) ?? []), ...hours.closedTimesOf('resourceId', place.id, zone)]),
    })),
    openBatches: rows.openBatches.filter(({ placeId }) => places.some((place) => place.id === placeId)),
  };
}

/** Whole days on which the laboratory is closed; a closure of some hours does not stop the count of its days. */
function closedDates(hours: PracticeHours, { id, zone }: Laboratory): string[] {
  const dates = new Set<string>();
  for (const closure of hours.closuresOf('laboratoryId', id, zone)) {
    if (!('zone' in closure)) continue;
    for (let date = closure.firstOn; date <= closure.lastOn; date = addDays(date, 1)) dates.add(date);
  }
  return [...dates].sort();
}

/** A way that takes no time and has no departures is a door: work is carried over whenever it is ready. */
function isUnderOneRoof({ id, toLabMinutes, toClinicMinutes }: Courier, hours: PracticeHours): boolean {
  return toLabMinutes === 0 && toClinicMinutes === 0 && hours.rows('courierId', id).length === 0;
}

/** Couriers between the clinics and laboratories in scope. Each departs by the clock of the place it leaves. */
export function toCourierSnapshots(
  { rows: { couriers, laboratories }, hours }: LaboratoryContext,
  clinics: readonly Clinic[],
  window: Interval,
): CourierSnapshot[] {
  return couriers.flatMap((courier) => {
    const clinic = clinics.find(({ id }) => id === courier.clinicId);
    const laboratory = laboratories.find(({ id }) => id === courier.laboratoryId);
    if (clinic === undefined || laboratory === undefined || isUnderOneRoof(courier, hours)) return [];
    const { id, clinicId, laboratoryId } = courier;
    const runs = (direction: 'to-lab' | 'to-clinic', zone: string, minutes: number) =>
      timetable(
        hours
          .rows('courierId', id)
          .filter((rule) => rule.direction === direction)
          .map((rule) => ({ ...toLocalRule(rule, zone), minutes })),
        { zone, minutes },
        window,
      );
    return [
      {
        id,
        clinicId,
        laboratoryId,
        toLab: runs('to-lab', clinic.zone, courier.toLabMinutes),
        toClinic: runs('to-clinic', laboratory.zone, courier.toClinicMinutes),
      },
    ];
  });
}

const NEVER = '2000-01-01T00:00';

/** One rule with the departures of several: those of further rules stand in it one by one, as far as the window needs. */
function timetable(
  [first, ...further]: readonly LocalRule[],
  { zone, minutes }: Pick<LocalRule, 'zone' | 'minutes'>,
  { startMs, endMs }: Interval,
): LocalRule {
  if (first === undefined) return { zone, minutes, startsLocal: NEVER, exceptLocal: [NEVER] };
  if (further.length === 0) return first;
  const window = { startMs: startMs - RUNS_BEFORE_MS, endMs };
  return {
    ...first,
    extraLocal: further.flatMap((rule) => courierRuns(rule, window)).map((run) => toLocal(run.departsAtMs, zone)),
  };
}
