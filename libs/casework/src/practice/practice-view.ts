import { localDate } from '@archwright/calendar';
import type { PracticeView } from '@archwright/contracts';
import {
  BenchPlace,
  Chair,
  Clinic,
  Courier,
  Laboratory,
  Practitioner,
  PractitionerClinic,
  WorkCentre,
} from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';

const IN_USE = 'IN (SELECT r.id FROM resource r WHERE r.retired_at IS NULL OR r.retired_at > :now)';

/**
 * What the actor's screens choose from. Clinics and laboratories are those the actor works for, and those a courier
 * joins to them; who works at the other end is not told.
 */
export async function practiceView(tx: EntityManager, actor: Actor, now: Date): Promise<PracticeView> {
  const { clinics, laboratories, orderedFrom, ownClinicIds } = await visiblePlaces(tx, actor);
  const zone = clinics[0]?.zone ?? laboratories[0]?.zone ?? 'UTC';
  const people = await peopleAt(tx, ownClinicIds, now);
  const benches = await benchesOf(
    tx,
    laboratories.map(({ id }) => id),
    now,
  );
  return {
    today: localDate(now.getTime(), zone),
    clinics: clinics.map(({ id, name, zone }) => ({
      id,
      name,
      zone,
      chairs: people.chairs
        .filter(({ clinicId }) => clinicId === id)
        .map((each) => ({ id: each.id, label: each.label })),
      clinicians: people.clinicians
        .filter((each) => each.clinicIds.includes(id))
        .map((each) => ({ id: each.id, name: each.name, skills: each.skills })),
    })),
    laboratories: laboratories.map(({ id, name, zone }) => ({
      id,
      name,
      zone,
      workCentres: benches
        .filter(({ laboratoryId }) => laboratoryId === id)
        .map((each) => ({ id: each.id, code: each.code, name: each.name, places: each.places })),
    })),
    orderedFrom: orderedFrom.map(({ id, name }) => ({ id, name })),
    paths: await publishedPaths(tx),
  };
}

async function visiblePlaces(tx: EntityManager, actor: Actor) {
  const [allClinics, allLaboratories, couriers] = [
    await tx.find(Clinic, { order: { id: 'ASC' } }),
    await tx.find(Laboratory, { order: { id: 'ASC' } }),
    await tx.find(Courier),
  ];
  const isAll = actor.role === 'administrator';
  const ownClinicIds = allClinics.map(({ id }) => id).filter((id) => isAll || actor.clinicIds.includes(id));
  const isOwn = (laboratoryId: string) => isAll || actor.laboratoryIds.includes(laboratoryId);
  const joins = (clinicId: string, laboratoryId: string) =>
    couriers.some((each) => each.clinicId === clinicId && each.laboratoryId === laboratoryId);
  const laboratories = allLaboratories.filter(
    ({ id }) => isOwn(id) || ownClinicIds.some((clinicId) => joins(clinicId, id)),
  );
  const clinics = allClinics.filter(
    ({ id }) => ownClinicIds.includes(id) || allLaboratories.some((each) => isOwn(each.id) && joins(id, each.id)),
  );
  const orderedFrom =
    ownClinicIds.length === 0 ? [] : allLaboratories.filter((each) => each.partnerOrganisationId !== null);
  return { clinics, laboratories, orderedFrom, ownClinicIds };
}

async function peopleAt(tx: EntityManager, clinicIds: readonly string[], now: Date) {
  const chairs = await tx
    .createQueryBuilder(Chair, 'c')
    .where({ clinicId: In(clinicIds) })
    .andWhere(`c.id ${IN_USE}`, { now })
    .orderBy('c.label')
    .getMany();
  const workplaces = await tx.findBy(PractitionerClinic, { clinicId: In(clinicIds) });
  const clinicians = await tx
    .createQueryBuilder(Practitioner, 'p')
    .where({ id: In(workplaces.map(({ practitionerId }) => practitionerId)), role: 'clinician' })
    .andWhere(`p.id ${IN_USE}`, { now })
    .orderBy('p.name')
    .getMany();
  return {
    chairs,
    clinicians: clinicians.map((each) => ({
      id: each.id,
      name: each.name,
      skills: each.skills,
      clinicIds: workplaces.filter(({ practitionerId }) => practitionerId === each.id).map(({ clinicId }) => clinicId),
    })),
  };
}

async function benchesOf(tx: EntityManager, laboratoryIds: readonly string[], now: Date) {
  const centres = await tx.find(WorkCentre, { where: { laboratoryId: In(laboratoryIds) }, order: { id: 'ASC' } });
  const places = await tx
    .createQueryBuilder(BenchPlace, 'p')
    .where({ workCentreId: In(centres.map(({ id }) => id)) })
    .andWhere(`p.id ${IN_USE}`, { now })
    .getMany();
  return centres.map((each) => ({
    laboratoryId: each.laboratoryId,
    id: each.id,
    code: each.code,
    name: each.name,
    places: places.filter(({ workCentreId }) => workCentreId === each.id).length,
  }));
}

/** Versions that new cases may still be opened on; of their documents only what a list shows. */
async function publishedPaths(tx: EntityManager): Promise<PracticeView['paths']> {
  return tx.query(
    `SELECT v.id AS "versionId", v.code, v.version, v.document->>'title' AS title, v.document->'arches' AS arches,
       jsonb_array_length(v.document->'visits') AS visits
     FROM treatment_path_version v
     WHERE NOT EXISTS (SELECT FROM treatment_path_withdrawal w WHERE w.path_version_id = v.id)
     ORDER BY v.code, v.version DESC`,
  );
}
