import { expandRule, normalise, type Interval } from '@archwright/calendar';
import type { ClinicSnapshot, ClinicianSnapshot } from '@archwright/protocol';
import { In, type EntityManager } from 'typeorm';
import { ProtectedTime } from '../calendar/calendar.entity.js';
import { Chair, Clinic, Kit, Practitioner, PractitionerClinic } from '../clinic/clinic.entity.js';
import type { BusyTimes } from './busy.js';
import { toLocalRule, type PracticeHours } from './hours.js';

/** Rows of the clinics in scope; what is retired is not among them. */
export interface ClinicRows {
  readonly clinics: readonly Clinic[];
  readonly chairs: readonly Chair[];
  readonly kits: readonly Kit[];
  readonly practitioners: readonly Practitioner[];
  readonly workplaces: readonly PractitionerClinic[];
  readonly protectedTimes: readonly ProtectedTime[];
}

/** Keeps out resources that were retired by `$now`; `of` is the alias whose id is the resource's. */
export const inUse = (of: string): string =>
  `${of}.id IN (SELECT r.id FROM resource r WHERE r.retired_at IS NULL OR r.retired_at > :now)`;

export async function loadClinicRows(tx: EntityManager, clinicIds: readonly string[], now: Date): Promise<ClinicRows> {
  const atClinics = { clinicId: In(clinicIds) };
  const clinics = await tx.findBy(Clinic, { id: In(clinicIds) });
  const chairs = await tx
    .createQueryBuilder(Chair, 'c')
    .where(atClinics)
    .andWhere(inUse('c'), { now })
    .orderBy('c.label')
    .getMany();
  const kits = await tx
    .createQueryBuilder(Kit, 'k')
    .where(atClinics)
    .andWhere(inUse('k'), { now })
    .orderBy('k.id')
    .getMany();
  const workplaces = await tx.findBy(PractitionerClinic, atClinics);
  const practitioners = await tx
    .createQueryBuilder(Practitioner, 'p')
    .where({ id: In(workplaces.map(({ practitionerId }) => practitionerId)) })
    .andWhere(inUse('p'), { now })
    .orderBy('p.name')
    .addOrderBy('p.id')
    .getMany();
  const protectedTimes = await tx.findBy(ProtectedTime, atClinics);
  const place = new Map(clinicIds.map((id, index) => [id, index]));
  clinics.sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0));
  return { clinics, chairs, kits, practitioners, workplaces, protectedTimes };
}

export interface ClinicContext {
  readonly rows: ClinicRows;
  readonly hours: PracticeHours;
  readonly busy: BusyTimes;
  readonly window: Interval;
  readonly nowMs: number;
}

export function toClinicSnapshot(clinic: Clinic, context: ClinicContext): ClinicSnapshot {
  const { rows, hours, busy } = context;
  const { id, name, zone } = clinic;
  const taken = (resourceId: string) =>
    normalise([...(busy.get(resourceId) ?? []), ...hours.closedTimesOf('resourceId', resourceId, zone)]);
  const people = peopleAt(clinic, context);
  return {
    id,
    name,
    zone,
    opening: hours.rulesOf('clinicId', id, zone),
    closures: hours.closuresOf('clinicId', id, zone),
    protected: protectedAt(clinic, context),
    chairs: rows.chairs
      .filter((chair) => chair.clinicId === id)
      .map((chair) => ({
        id: chair.id,
        label: chair.label,
        wheelchairRoom: chair.wheelchairRoom,
        busy: taken(chair.id),
      })),
    clinicians: people('clinician'),
    assistants: people('assistant').map((each) => ({
      id: each.id,
      working: each.working,
      absences: each.absences,
      busy: each.busy,
    })),
    kits: rows.kits
      .filter((kit) => kit.clinicId === id)
      .map((kit) => ({
        id: kit.id,
        code: kit.code,
        reprocessingMinutes: kit.reprocessingMinutes,
        busy: taken(kit.id),
      })),
  };
}

/** People who work at a clinic, with the hours they work at this one. */
function peopleAt({ id, zone }: Clinic, { rows, hours, busy }: ClinicContext) {
  const here = new Set(
    rows.workplaces.filter(({ clinicId }) => clinicId === id).map(({ practitionerId }) => practitionerId),
  );
  return (role: Practitioner['role']): ClinicianSnapshot[] =>
    rows.practitioners
      .filter((person) => person.role === role && here.has(person.id))
      .map((person) => ({
        id: person.id,
        name: person.name,
        skills: person.skills,
        working: hours
          .rows('practitionerId', person.id)
          .filter(({ atClinicId }) => atClinicId === id)
          .map((rule) => toLocalRule(rule, zone)),
        absences: hours.closuresOf('resourceId', person.id, zone),
        busy: busy.get(person.id) ?? [],
      }));
}

/** Minutes still kept; each occurrence opens for everyone a stated time before it begins. */
function protectedAt({ id, zone }: Clinic, { rows, hours, window, nowMs }: ClinicContext): Interval[] {
  const kept = rows.protectedTimes
    .filter(({ clinicId }) => clinicId === id)
    .flatMap((time) =>
      hours
        .rulesOf('protectedTimeId', time.id, zone)
        .flatMap((rule) => expandRule(rule, window))
        .filter(({ startMs }) => startMs - time.releasedHoursBefore * 3_600_000 > nowMs),
    );
  return normalise(kept);
}
