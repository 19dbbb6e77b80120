import { addDays, openIntervals, startOfDayMs, totalMinutes, type Interval } from '@archwright/calendar';
import type { UseFigure } from '@archwright/contracts';
import type { ClinicSnapshot } from '@archwright/protocol';
import { loadSnapshot } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadOf } from '../lab/load-view.js';

export interface UsePeriod {
  readonly fromOn: string;
  readonly days: number;
  /** By whose days the period is meant. */
  readonly zone: string;
}

/** Minutes booked of minutes open, for each chair and clinician of the clinics and each work centre of the laboratories. */
export async function useOfTime(
  tx: EntityManager,
  actor: Actor,
  clinicIds: readonly string[],
  { fromOn, days, zone }: UsePeriod,
  now: Date,
): Promise<UseFigure[]> {
  const window = { startMs: startOfDayMs(fromOn, zone), endMs: startOfDayMs(addDays(fromOn, days), zone) };
  const scope = { clinicIds, fromMs: window.startMs, untilMs: window.endMs };
  const { clinics, laboratories } = await loadSnapshot(tx, scope, now);
  const visits = await visitMinutes(tx, window);
  const rows = clinics.flatMap((clinic) => useOfClinic(clinic, visits, window));
  for (const { id } of laboratories) {
    const { laboratoryName, workCentres } = await loadOf(tx, actor, { laboratoryId: id, from: fromOn, days }, now);
    rows.push(
      ...workCentres.map((centre): UseFigure => ({
        ...{ kind: 'work-centre', id: centre.id, name: centre.name, place: laboratoryName },
        bookedMinutes: total(centre.days.map(({ bookedMinutes }) => bookedMinutes)),
        openMinutes: total(centre.days.map(({ openMinutes }) => openMinutes)),
      })),
    );
  }
  return rows;
}

/** By resource and, for people, by clinic: who works at two clinics is used at each. */
type VisitMinutes = ReadonlyMap<string, number>;

const keyOf = (resourceId: string, clinicId: string): string => `${resourceId} ${clinicId}`;

async function visitMinutes(tx: EntityManager, { startMs, endMs }: Interval): Promise<VisitMinutes> {
  const rows: { resourceId: string; clinicId: string; minutes: number }[] = await tx.query(
    `SELECT o.resource_id AS "resourceId", a.clinic_id AS "clinicId",
       round(sum(extract(epoch FROM least(o.ends_at, $2) - greatest(o.starts_at, $1)) / 60))::integer AS minutes
     FROM occupancy o JOIN appointment a ON a.id = o.appointment_id
     WHERE o.starts_at < $2 AND o.ends_at > $1 AND a.state NOT IN ('cancelled', 'missed') GROUP BY 1, 2`,
    [new Date(startMs), new Date(endMs)],
  );
  return new Map(rows.map(({ resourceId, clinicId, minutes }) => [keyOf(resourceId, clinicId), minutes]));
}

function useOfClinic(clinic: ClinicSnapshot, visits: VisitMinutes, window: Interval): UseFigure[] {
  const open = openIntervals({ rules: clinic.opening, closures: clinic.closures }, window);
  const booked = (id: string) => visits.get(keyOf(id, clinic.id)) ?? 0;
  const chairs = clinic.chairs.map(({ id, label }): UseFigure => ({
    ...{ kind: 'chair', id, name: label, place: clinic.name },
    bookedMinutes: booked(id),
    openMinutes: Math.round(totalMinutes(open)),
  }));
  const clinicians = clinic.clinicians.map(({ id, name, working, absences }): UseFigure => ({
    ...{ kind: 'clinician', id, name, place: clinic.name },
    bookedMinutes: booked(id),
    openMinutes: Math.round(
      totalMinutes(openIntervals({ rules: working, closures: [...absences, ...clinic.closures] }, window)),
    ),
  }));
  return [...chairs, ...clinicians];
}

const total = (minutes: readonly number[]): number => minutes.reduce((sum, one) => sum + one, 0);
