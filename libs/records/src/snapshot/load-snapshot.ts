import type { PracticeSnapshot } from '@archwright/protocol';
import type { EntityManager } from 'typeorm';
import { loadBusyTimes } from './busy.js';
import { loadClinicRows, toClinicSnapshot } from './clinics.js';
import { loadHours } from './hours.js';
import { loadLaboratoryRows, toCourierSnapshots, toLaboratorySnapshot } from './laboratories.js';
import type { SnapshotScope } from './snapshot-scope.js';

/**
 * Everything shared that planning reads, as it stands at `now`: live holds of others count as taken, expired ones don't.
 * The number of queries does not depend on the size of the practice.
 */
export async function loadSnapshot(tx: EntityManager, scope: SnapshotScope, now: Date): Promise<PracticeSnapshot> {
  const clinicRows = await loadClinicRows(tx, scope.clinicIds, now);
  const laboratoryRows = await loadLaboratoryRows(tx, scope, now);
  const resourceIds = idsOf(clinicRows.chairs, clinicRows.kits, clinicRows.practitioners, laboratoryRows.places);
  const hours = await loadHours(
    tx,
    {
      clinicIds: idsOf(clinicRows.clinics),
      practitionerIds: idsOf(clinicRows.practitioners),
      laboratoryIds: idsOf(laboratoryRows.laboratories),
      workCentreIds: idsOf(laboratoryRows.workCentres),
      courierIds: idsOf(laboratoryRows.couriers),
      protectedTimeIds: idsOf(clinicRows.protectedTimes),
      resourceIds,
    },
    scope,
  );
  const busy = await loadBusyTimes(tx, resourceIds, scope, now);
  const window = { startMs: scope.fromMs, endMs: scope.untilMs };
  const atClinics = { rows: clinicRows, hours, busy, window, nowMs: now.getTime() };
  const atLaboratories = { rows: laboratoryRows, hours, busy };
  return {
    clinics: clinicRows.clinics.map((clinic) => toClinicSnapshot(clinic, atClinics)),
    laboratories: laboratoryRows.laboratories.map((each) => toLaboratorySnapshot(each, atLaboratories)),
    couriers: toCourierSnapshots(atLaboratories, clinicRows.clinics, window),
  };
}

function idsOf(...lists: readonly (readonly { readonly id: string }[])[]): string[] {
  return lists.flatMap((list) => list.map(({ id }) => id));
}
