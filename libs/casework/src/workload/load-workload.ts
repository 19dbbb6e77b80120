import { normalise, subtract, type Interval } from '@archwright/calendar';
import { isToCome, type CaseWork, type SharedMachine, type WorkloadRequest } from '@archwright/protocol';
import { Hold, LabStep, Laboratory, TreatmentCase, WorkCentre, loadSnapshot } from '@archwright/records';
import { In, IsNull, Not, type EntityManager } from 'typeorm';
import { loadChains, type LoadedChain } from '../cases/chain.js';
import { loadBookings, type StageBooking } from '../planning/bookings.js';
import { fixedStages, fixedSteps, progressWithArrivals } from '../planning/fixed-parts.js';

const WEEK_MS = 7 * 86_400_000;
/** Visits that moved work is for lie behind it: so many weeks more are looked at. */
const WEEKS_BEHIND = 3;

/** Time of a place. */
interface HeldTime extends Interval {
  readonly placeId: string;
}

/** The planned work of a laboratory as it stood at one instant, with what an accepted plan is checked against. */
export interface LoadedWorkload {
  readonly request: WorkloadRequest;
  readonly cases: readonly TreatmentCase[];
  /** Steps that may move. */
  readonly steps: readonly LabStep[];
}

/**
 * All work of a laboratory that is planned to begin within some weeks and has not begun, between visits that stay. What has
 * begun, is held on the telephone or goes to another organisation keeps its time.
 *
 * @param among the cases whose work alone may move, that for provisional visits included; left out: every case, without it
 */
export async function loadWorkload(
  tx: EntityManager,
  laboratory: Laboratory,
  weeks: number,
  now: Date,
  among: readonly string[] | null = null,
): Promise<LoadedWorkload> {
  const nowMs = now.getTime();
  const until = new Date(nowMs + weeks * WEEK_MS);
  const planned = await movableSteps(tx, { laboratoryId: laboratory.id, until, among }, now);
  const cases = await tx.find(TreatmentCase, {
    where: { id: In(planned.map(({ caseId }) => caseId)), state: 'open' },
    order: { id: 'ASC' },
  });
  const candidates = planned.filter(({ caseId }) => cases.some(({ id }) => id === caseId));
  const chains = await loadChains(
    tx,
    cases.map(({ id }) => id),
  );
  const visits = new Map<string, StageBooking[]>();
  for (const [caseId, { rows }] of chains) visits.set(caseId, await loadBookings(tx, rows.stages));
  const steps = candidates.filter((step) => isBetweenVisits(step, visits.get(step.caseId)));
  const held = { times: await timesOf(tx, steps), runOf: await runsOf(tx, steps) };
  const works: CaseWork[] = [];
  for (const treatmentCase of cases) {
    const loaded = chains.get(treatmentCase.id);
    const bookings = visits.get(treatmentCase.id);
    const own = steps.filter(({ caseId }) => caseId === treatmentCase.id);
    if (loaded !== undefined && bookings !== undefined) {
      works.push(workOf(treatmentCase, { loaded, bookings, steps: own }, held, nowMs));
    }
  }
  const horizonWeeks = weeks + WEEKS_BEHIND;
  const clinicIds = [...new Set(works.flatMap((work) => work.clinicIds))];
  const untilMs = nowMs + (horizonWeeks + 1) * WEEK_MS;
  const practice = await loadSnapshot(tx, { clinicIds, fromMs: nowMs, untilMs }, now);
  const own = await tx.findBy(Laboratory, { partnerOrganisationId: IsNull(), id: Not(laboratory.id) });
  const request: WorkloadRequest = {
    laboratoryId: laboratory.id,
    otherLaboratoryIds: own.map(({ id }) => id).sort(),
    practice: withoutWork(practice, held.times),
    cases: works,
    machines: await sharedMachines(tx, steps, now),
    overtime: [],
    nowMs,
    horizonWeeks,
    zone: laboratory.zone,
  };
  return { request, cases, steps };
}

/** What is kept for visits that the patient knows of, until somebody makes them firm. */
const IS_PROVISIONAL = `h.kind = 'provisional' AND h.state = 'active' AND h.expires_at > :now`;

interface Asked {
  readonly laboratoryId: string;
  readonly until: Date;
  readonly among: readonly string[] | null;
}

function movableSteps(tx: EntityManager, { laboratoryId, until, among }: Asked, now: Date): Promise<LabStep[]> {
  const found = tx
    .createQueryBuilder(LabStep, 's')
    .leftJoin(Hold, 'h', 'h.id = s.holdId')
    .where({ laboratoryId, orderId: IsNull(), state: In(['planned', 'ready']) })
    .andWhere('s.startsAt < :until', { until })
    .orderBy('s.startsAt')
    .addOrderBy('s.id');
  const sought =
    among === null
      ? found.andWhere('s.holdId IS NULL')
      : found
          .andWhere('s.caseId = ANY (:among)', { among })
          .andWhere(`(s.holdId IS NULL OR ${IS_PROVISIONAL})`, { now });
  return sought.getMany();
}

const stays = ({ appointment }: StageBooking): boolean => appointment.state !== 'held';

function isBetweenVisits({ afterStage, beforeStage }: LabStep, bookings: readonly StageBooking[] = []): boolean {
  const hasVisit = (code: string) => bookings.some((booking) => booking.stage.code === code && stays(booking));
  return hasVisit(afterStage) && hasVisit(beforeStage);
}

interface CaseParts {
  readonly loaded: LoadedChain;
  readonly bookings: readonly StageBooking[];
  /** Those that may move. */
  readonly steps: readonly LabStep[];
}

interface Held {
  readonly times: ReadonlyMap<string, readonly HeldTime[]>;
  readonly runOf: ReadonlyMap<string, RunOfStep>;
}

/** The case with every visit where it is; stages without one are nothing that work could be planned for. */
function workOf(
  { id, clinicIds }: TreatmentCase,
  { loaded: { chain, progress, rows }, bookings, steps }: CaseParts,
  { times, runOf }: Held,
  nowMs: number,
): CaseWork {
  const stages = fixedStages(bookings, stays);
  const moving = new Set(steps.map((step) => step.id));
  const known = progressWithArrivals(progress, bookings);
  const hasVisit = (code: string) => stages.some((stage) => stage.code === code);
  return {
    caseId: id,
    chain,
    progress: {
      ...known,
      stages: known.stages.map((row) =>
        isToCome(row.state) && !hasVisit(row.code) ? { ...row, state: 'dropped' as const } : row,
      ),
    },
    fixedStages: stages,
    fixedSteps: fixedSteps(rows.steps, nowMs, (step) => !moving.has(step.id)),
    movable: steps.map((step) => {
      const run = runOf.get(step.id) ?? null;
      return {
        code: step.code,
        startMs: step.startsAt?.getTime() ?? 0,
        placeId: step.placeId ?? run?.placeId ?? null,
        holds: times.get(step.id) ?? [],
        run,
      };
    }),
    clinicIds,
  };
}

interface RunOfStep {
  readonly id: string;
  readonly placeId: string;
  readonly units: number;
}

/** By step: the run it shares. */
async function runsOf(tx: EntityManager, steps: readonly LabStep[]): Promise<Map<string, RunOfStep>> {
  const rows: (RunOfStep & { stepId: string })[] = await tx.query(
    `SELECT m.lab_step_id AS "stepId", b.id, b.place_id AS "placeId", m.units
     FROM batch b JOIN batch_member m ON m.batch_id = b.id WHERE m.lab_step_id = ANY ($1::uuid[])`,
    [steps.map(({ id }) => id)],
  );
  return new Map(rows.map(({ stepId, ...run }) => [stepId, run]));
}

/** Time that steps which may move take of places: their own, and that of runs with nobody else's work in them. */
async function timesOf(tx: EntityManager, steps: readonly LabStep[]): Promise<Map<string, HeldTime[]>> {
  const ids = steps.map(({ id }) => id);
  const rows: { stepId: string; placeId: string; startsAt: Date; endsAt: Date }[] = await tx.query(
    `SELECT coalesce(o.lab_step_id, m.lab_step_id) AS "stepId", o.resource_id AS "placeId",
       o.starts_at AS "startsAt", o.ends_at AS "endsAt"
     FROM occupancy o LEFT JOIN batch_member m ON m.batch_id = o.batch_id
     WHERE o.lab_step_id = ANY ($1::uuid[])
       OR o.batch_id IN (SELECT batch_id FROM batch_member GROUP BY batch_id
         HAVING bool_and(lab_step_id = ANY ($1::uuid[])))`,
    [ids],
  );
  const times = new Map<string, HeldTime[]>();
  for (const { stepId, placeId, startsAt, endsAt } of rows) {
    const held = { placeId, startMs: startsAt.getTime(), endMs: endsAt.getTime() };
    times.set(stepId, [...(times.get(stepId) ?? []), held]);
  }
  return times;
}

function withoutWork(
  practice: WorkloadRequest['practice'],
  times: ReadonlyMap<string, readonly HeldTime[]>,
): WorkloadRequest['practice'] {
  const taken = [...times.values()].flat();
  return {
    ...practice,
    laboratories: practice.laboratories.map((laboratory) => ({
      ...laboratory,
      workCentres: laboratory.workCentres.map((centre) => ({
        ...centre,
        places: centre.places.map((place) => ({
          ...place,
          busy: subtract(place.busy, normalise(taken.filter(({ placeId }) => placeId === place.id))),
        })),
      })),
    })),
  };
}

/** Machines whose runs several cases share. */
async function sharedMachines(tx: EntityManager, steps: readonly LabStep[], now: Date): Promise<SharedMachine[]> {
  const centres = await tx.findBy(WorkCentre, { batchKind: Not(IsNull()) });
  const runs: (Omit<SharedMachine['runs'][number], 'startMs' | 'endMs'> & {
    workCentreId: string;
    startsAt: Date;
    endsAt: Date;
  })[] = await tx.query(
    `SELECT b.id, b.place_id AS "placeId", b.kind, b.starts_at AS "startsAt", b.ends_at AS "endsAt",
       p.work_centre_id AS "workCentreId", count(o.id) > 0 AS "hasOthers",
       (b.size - coalesce(sum(o.units), 0))::integer AS "freeUnits"
     FROM batch b JOIN bench_place p ON p.id = b.place_id
       LEFT JOIN batch_member o ON o.batch_id = b.id AND o.lab_step_id <> ALL ($1::uuid[])
     WHERE b.starts_at >= $2 GROUP BY b.organisation_id, b.id, p.organisation_id, p.id
     ORDER BY b.starts_at, b.id`,
    [steps.map(({ id }) => id), now],
  );
  return centres.map(({ id, batchSize }) => ({
    workCentreId: id,
    runSize: batchSize ?? 1,
    runs: runs
      .filter(({ workCentreId }) => workCentreId === id)
      .map(({ id: runId, placeId, kind, startsAt, endsAt, freeUnits, hasOthers }) => ({
        id: runId,
        placeId,
        kind,
        startMs: startsAt.getTime(),
        endMs: endsAt.getTime(),
        freeUnits,
        hasOthers,
      })),
  }));
}
