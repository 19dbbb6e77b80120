import { localDate } from '@archwright/calendar';
import type { Wishes } from '@archwright/contracts';
import { escortTimes, type PatientSnapshot } from '@archwright/protocol';
import type { EntityManager } from 'typeorm';
import { Patient } from '../patient/patient.entity.js';
import { loadBusyTimes } from './busy.js';
import type { SnapshotScope } from './snapshot-scope.js';

const DAY_MS = 86_400_000;

export interface PatientScope extends Omit<SnapshotScope, 'clinicIds' | 'laboratoryIds'> {
  /** Of this case in place of the patient's own; days on which the patient cannot come count of both. */
  readonly wishes: Wishes;
  /** The clinician's way to the patient, each way, when visits are made at home; else the patient comes to the clinic. */
  readonly homeTravelMinutes?: number | null;
}

/**
 * What planning a case needs to know of its patient.
 *
 * @returns null when the organisation has no such patient
 */
export async function loadPatientSnapshot(
  tx: EntityManager,
  patientId: string,
  scope: PatientScope,
  now: Date,
): Promise<PatientSnapshot | null> {
  const patient = await tx.findOneBy(Patient, { id: patientId });
  if (patient === null) return null;
  const busy = await loadBusyTimes(tx, [patientId], scope, now);
  const sinceYesterday = { ...scope, fromMs: scope.fromMs - DAY_MS };
  const visits = await loadBusyTimes(tx, [patientId], sinceYesterday, now, 'visit');
  const { weekdays, from, to, unavailableOn, escort } = scope.wishes;
  return {
    id: patientId,
    zone: patient.zone,
    busy: busy.get(patientId) ?? [],
    otherVisits: visits.get(patientId) ?? [],
    wishes: { weekdays, from, to },
    unavailableOn: [...new Set([...patient.wishes.unavailableOn, ...unavailableOn])].sort(),
    escort: escortTimes(escort, patient.zone, localDate(scope.fromMs, patient.zone)),
    wheelchairRoom: patient.wheelchairRoom,
    travelMinutes: patient.travelMinutes,
    chairMinutesPerDay: patient.chairMinutesPerDay,
    homeTravelMinutes: scope.homeTravelMinutes ?? null,
  };
}
