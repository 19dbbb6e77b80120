import {
  BearingScrew,
  Chair,
  Clinic,
  Device,
  Kit,
  Practitioner,
  PractitionerClinic,
  ProtectedTime,
  Resource,
  uuidv7,
} from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { scenario, type Hours } from '../demo/scenario.js';
import type { HoursWriter } from './hours.js';

/** Ids by the keys of the scenario. */
export type IdsByKey = ReadonlyMap<string, string>;

/** The id of something that the scenario names by its key. */
export function idOf(ids: IdsByKey, key: string): string {
  const id = ids.get(key);
  if (id === undefined) throw new Error(`The scenario names "${key}", which it does not have.`);
  return id;
}

/** Invented, as everything in the demonstration. */
const SCREW = { pitchMm: 0.5, raisesBy: 'clockwise', statedBy: null } as const;

export async function writeClinics(tx: EntityManager, hours: HoursWriter, now: Date): Promise<IdsByKey> {
  const ids = new Map<string, string>();
  for (const clinic of scenario.clinics) {
    const clinicId = uuidv7();
    ids.set(clinic.key, clinicId);
    const { name, zone, address, phone } = clinic;
    await tx.insert(Clinic, { id: clinicId, name, zone, address, phone });
    await hours.write({ clinicId }, clinic.opening);
    for (const { label, wheelchairRoom } of clinic.chairs) {
      const id = await writeResource(tx, 'chair', label);
      await tx.insert(Chair, { id, clinicId, label, wheelchairRoom });
    }
    for (const { code, label, reprocessingMinutes } of clinic.kits) {
      const id = await writeResource(tx, 'kit', label);
      await tx.insert(Kit, { id, clinicId, code, reprocessingMinutes });
      if (code === 'tracing-set') await tx.insert(BearingScrew, { ...SCREW, id: uuidv7(), kitId: id, statedAt: now });
    }
    for (const device of clinic.devices) await tx.insert(Device, { id: uuidv7(), clinicId, ...device });
    for (const { from, minutes, releasedHoursBefore } of clinic.protectedMinutes) {
      const protectedTimeId = uuidv7();
      const reason = 'Sore spots and breakages';
      await tx.insert(ProtectedTime, { id: protectedTimeId, clinicId, reason, releasedHoursBefore });
      for (const { rule } of clinic.opening) await hours.add({ protectedTimeId }, rule, from, minutes);
    }
  }
  return ids;
}

export async function writePractitioners(
  tx: EntityManager,
  hours: HoursWriter,
  clinicIds: IdsByKey,
): Promise<IdsByKey> {
  const ids = new Map<string, string>();
  const write = async (role: Practitioner['role'], person: Person): Promise<void> => {
    const id = await writeResource(tx, role, person.name);
    ids.set(person.key, id);
    await tx.insert(Practitioner, { id, role, name: person.name, skills: [...person.skills] });
    for (const [clinic, working] of Object.entries(person.working)) {
      const clinicId = idOf(clinicIds, clinic);
      await tx.insert(PractitionerClinic, { id: uuidv7(), practitionerId: id, clinicId });
      await hours.write({ practitionerId: id, atClinicId: clinicId }, working);
    }
  };
  for (const person of scenario.clinicians) await write('clinician', person);
  for (const person of scenario.assistants) await write('assistant', { ...person, skills: [] });
  return ids;
}

interface Person {
  readonly key: string;
  readonly name: string;
  readonly skills: readonly string[];
  /** By the key of the clinic. */
  readonly working: Readonly<Record<string, readonly Hours[]>>;
}

/** What serves one at a time; the chair, person, kit or place itself gets the same id. */
export async function writeResource(tx: EntityManager, kind: Resource['kind'], label: string): Promise<string> {
  const id = uuidv7();
  await tx.insert(Resource, { id, kind, label });
  return id;
}
