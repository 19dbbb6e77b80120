import { normalise, type Interval } from '@archwright/calendar';
import type { SetupChange, SetupPreview, StrandedTime } from '@archwright/contracts';
import type { PracticeSnapshot } from '@archwright/protocol';
import { Clinic, loadSnapshot } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { clinicScope } from '../patients/patient-access.js';
import { bookedAhead, type BookedTime } from './booked-ahead.js';
import { tryChange } from './change-setup.js';
import { whyStranded, type ClosedResources } from './stranded.js';

/**
 * What a change would do to booked time, before it is made: the change is made, everything booked from now on is looked
 * at again, and the change is given up. What lies outside hours already is not the change's doing and is left out.
 */
export async function previewSetup(
  tx: EntityManager,
  actor: Actor,
  change: SetupChange,
  now: Date,
): Promise<SetupPreview> {
  const booked = await bookedAhead(tx, now);
  const scope = clinicScope(actor);
  const before = await strandedOf(tx, booked, scope, now);
  await tx.query('SAVEPOINT preview');
  await tryChange(tx, { actor, now }, change);
  const after = await strandedOf(tx, booked, scope, now);
  await tx.query('ROLLBACK TO SAVEPOINT preview');
  return {
    looked: booked.length,
    stranded: [...after].filter(([time]) => !before.has(time)).map(([, view]) => view),
    settled: [...before.keys()].filter((time) => !after.has(time)).length,
  };
}

async function strandedOf(
  tx: EntityManager,
  booked: readonly BookedTime[],
  scope: readonly string[] | null,
  now: Date,
): Promise<Map<BookedTime, StrandedTime>> {
  const clinicIds = (await tx.find(Clinic, { select: { id: true }, order: { id: 'ASC' } })).map(({ id }) => id);
  const fromMs = now.getTime();
  const untilMs = Math.max(fromMs, ...booked.map(({ endMs }) => endMs)) + 1;
  const practice = await loadSnapshot(tx, { clinicIds, fromMs, untilMs }, now);
  const closed = await closedResources(tx);
  const found = new Map<BookedTime, StrandedTime>();
  for (const time of booked) {
    const why = whyStranded(time, practice, closed);
    if (why !== null) found.set(time, viewOf(time, practice, scope, why));
  }
  return found;
}

/** Closures of single chairs, kits and bench places are kept as occupied time too; a person's are in the snapshot. */
async function closedResources(tx: EntityManager): Promise<ClosedResources> {
  const rows: { resourceId: string; startMs: number; endMs: number }[] = await tx.query(
    `SELECT r.resource_id AS "resourceId",
       (extract(epoch FROM coalesce(r.starts_at, r.from_on::timestamp AT TIME ZONE t.zone)) * 1000)::float8 AS "startMs",
       (extract(epoch FROM coalesce(r.ends_at, r.until_on::timestamp AT TIME ZONE t.zone)) * 1000)::float8 AS "endMs"
     FROM closure r JOIN (
       SELECT h.id, c.zone FROM chair h JOIN clinic c ON c.id = h.clinic_id
       UNION ALL SELECT k.id, c.zone FROM kit k JOIN clinic c ON c.id = k.clinic_id
       UNION ALL SELECT p.id, l.zone FROM bench_place p JOIN work_centre w ON w.id = p.work_centre_id
         JOIN laboratory l ON l.id = w.laboratory_id) t ON t.id = r.resource_id`,
  );
  const times = new Map<string, Interval[]>();
  for (const { resourceId, startMs, endMs } of rows)
    times.set(resourceId, normalise([...(times.get(resourceId) ?? []), { startMs, endMs }]));
  return times;
}

/** Who comes to a clinic that the actor does not answer for is not told; that somebody does is. */
function viewOf(
  time: BookedTime,
  practice: PracticeSnapshot,
  scope: readonly string[] | null,
  why: string,
): StrandedTime {
  const { kind, caseId, caseNumber, startMs, endMs } = time;
  const isVisit = time.kind === 'visit';
  return {
    ...{ kind, caseId, caseNumber, why },
    appointmentId: isVisit ? time.appointmentId : null,
    patientName: isVisit && (scope?.includes(time.clinicId) ?? true) ? time.patientName : null,
    startsAt: new Date(startMs).toISOString(),
    endsAt: new Date(endMs).toISOString(),
    zone: zoneOf(time, practice),
  };
}

function zoneOf(time: BookedTime, { clinics, laboratories, couriers }: PracticeSnapshot): string {
  if (time.kind === 'visit') return clinics.find(({ id }) => id === time.clinicId)?.zone ?? 'UTC';
  if (time.kind === 'lab-work') {
    const at = laboratories.find(({ workCentres }) => workCentres.some(({ id }) => id === time.workCentreId));
    return at?.labDays.zone ?? 'UTC';
  }
  const courier = couriers.find(({ id }) => id === time.courierId);
  return (time.direction === 'to-lab' ? courier?.toLab.zone : courier?.toClinic.zone) ?? clinics[0]?.zone ?? 'UTC';
}
