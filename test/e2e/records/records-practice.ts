import {
  Appointment,
  BenchPlace,
  CaseArch,
  Chair,
  Clinic,
  Directory,
  Hold,
  LabStep,
  Laboratory,
  Organisation,
  Patient,
  PatientIdentity,
  Plan,
  Practitioner,
  PractitionerClinic,
  Resource,
  TreatmentCase,
  TreatmentPathVersion,
  WorkCentre,
  inOrganisation,
  nextCaseNumber,
  uuidv7,
} from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';

export const NOW = new Date('2027-01-04T08:00:00Z');

export interface TestPractice {
  readonly organisationId: string;
  readonly clinicId: string;
  readonly chairIds: readonly string[];
  readonly clinicianIds: readonly string[];
  readonly laboratoryId: string;
  readonly workCentreId: string;
  readonly placeIds: readonly string[];
  readonly pathVersionId: string;
}

/** A practice with one clinic and one laboratory: empty calendars, nothing booked. */
export async function aPractice(
  db: DataSource,
  { chairs = 1, clinicians = 1, places = 1 }: { chairs?: number; clinicians?: number; places?: number } = {},
): Promise<TestPractice> {
  const organisationId = uuidv7();
  return inOrganisation(db, organisationId, async (tx) => {
    const settings = {
      reminderLeadMinutes: { mail: [2880], phone: [] },
      quietHours: { from: '20:00', to: '08:00' },
      phoneHoldMinutes: 15,
      provisionalHoldMinutes: 2880,
    };
    await tx.insert(Organisation, { id: organisationId, name: 'Practice', kind: 'practice', locale: 'en', settings });
    await tx.insert(Directory, { id: uuidv7(), kind: 'organisation', organisationId });
    const clinicId = uuidv7();
    await tx.insert(Clinic, { id: clinicId, name: 'Clinic', zone: 'Europe/Berlin', address: 'Street 1' });
    const laboratoryId = uuidv7();
    const workCentreId = uuidv7();
    const pathVersionId = uuidv7();
    await tx.insert(Laboratory, {
      id: laboratoryId,
      name: 'Laboratory',
      zone: 'Europe/Berlin',
      cutOffLocal: '12:00',
      closedWeekdays: [6, 7],
    });
    await tx.insert(WorkCentre, { id: workCentreId, laboratoryId, code: 'processing', name: 'Processing' });
    await tx.insert(TreatmentPathVersion, {
      id: pathVersionId,
      code: 'conventional',
      version: 1,
      document: {},
      documentHash: 'x',
    });
    const practice = {
      organisationId,
      clinicId,
      laboratoryId,
      workCentreId,
      pathVersionId,
      chairIds: await many(chairs, async (number) => {
        const id = await aResource(tx, 'chair', `Chair ${String(number)}`);
        await tx.insert(Chair, { id, clinicId, label: `Chair ${String(number)}` });
        return id;
      }),
      clinicianIds: await many(clinicians, async (number) => {
        const id = await aResource(tx, 'clinician', `Clinician ${String(number)}`);
        await tx.insert(Practitioner, {
          id,
          role: 'clinician',
          name: `Clinician ${String(number)}`,
          skills: ['complete-denture'],
        });
        await tx.insert(PractitionerClinic, { id: uuidv7(), practitionerId: id, clinicId });
        return id;
      }),
      placeIds: await many(places, async (number) => {
        const id = await aResource(tx, 'place', `Place ${String(number)}`);
        await tx.insert(BenchPlace, { id, workCentreId, number, label: `Place ${String(number)}` });
        return id;
      }),
    };
    return practice;
  });
}

export interface TestCase {
  readonly caseId: string;
  readonly patientId: string;
}

export async function aCase(tx: EntityManager, practice: TestPractice): Promise<TestCase> {
  const patientId = await aResource(tx, 'patient', 'patient');
  const noWishes = { weekdays: [], from: null, to: null, unavailableOn: [] };
  await tx.insert(Patient, {
    id: patientId,
    zone: 'Europe/Berlin',
    locale: 'en',
    acceptedClinicIds: [],
    wishes: noWishes,
  });
  await tx.insert(PatientIdentity, {
    id: uuidv7(),
    patientId,
    givenName: 'Ada',
    familyName: 'Mole',
    birthOn: '1944-05-01',
    searchKey: 'mole ada',
  });
  const caseId = uuidv7();
  await tx.insert(TreatmentCase, {
    id: caseId,
    number: await nextCaseNumber(tx, 2027),
    patientId,
    state: 'open',
    homeClinicId: practice.clinicId,
    clinicIds: [practice.clinicId],
    wishes: noWishes,
  });
  await tx.insert(CaseArch, { id: uuidv7(), caseId, arch: 'upper', pathVersionId: practice.pathVersionId });
  return { caseId, patientId };
}

export async function aHold(tx: EntityManager, caseId: string, expiresAt: Date): Promise<string> {
  const planId = uuidv7();
  await tx.insert(Plan, {
    id: planId,
    caseId,
    kind: 'offer',
    label: 'Offer',
    document: {},
    planHash: 'x',
    instanceHash: 'x',
    basedOn: {},
    codeVersion: '0',
    seed: 0,
    streams: 1,
    epochs: 0,
    objective: {},
  });
  const id = uuidv7();
  await tx.insert(Hold, { id, caseId, planId, kind: 'phone', state: 'active', expiresAt });
  return id;
}

export async function anAppointment(
  tx: EntityManager,
  practice: TestPractice,
  visit: { patientId: string; startsAt: Date; endsAt: Date; chairId?: string; clinicianId?: string },
): Promise<string> {
  const id = uuidv7();
  await tx.insert(Appointment, {
    chairId: practice.chairIds[0],
    clinicianId: practice.clinicianIds[0],
    ...visit,
    id,
    clinicId: practice.clinicId,
    state: 'booked',
    uid: `${id}@example.test`,
  });
  return id;
}

export async function aLabStep(
  tx: EntityManager,
  practice: TestPractice,
  step: { caseId: string; code: string; startsAt: Date; endsAt: Date },
): Promise<string> {
  const id = uuidv7();
  await tx.insert(LabStep, {
    ...step,
    id,
    arches: ['upper'],
    phase: 'wax',
    afterStage: 'V1',
    beforeStage: 'V2',
    laboratoryId: practice.laboratoryId,
    workCentreId: practice.workCentreId,
    segments: [],
    state: 'planned',
  });
  return id;
}

/** An instant on 5 January 2027, such as `at('09:20')`, or some days later. */
export function at(time: string, daysLater = 0): Date {
  return new Date(Date.parse(`2027-01-05T${time}:00Z`) + daysLater * 86_400_000);
}

/** The element of a list that a test knows to be there. */
export function nth<Item>(list: readonly Item[], index: number): Item {
  const item = list[index];
  if (item === undefined) throw new Error(`The list has no element ${String(index)}.`);
  return item;
}

async function aResource(tx: EntityManager, kind: Resource['kind'], label: string): Promise<string> {
  const id = uuidv7();
  await tx.insert(Resource, { id, kind, label });
  return id;
}

async function many(count: number, make: (number: number) => Promise<string>): Promise<string[]> {
  const ids: string[] = [];
  for (let number = 1; number <= count; number++) ids.push(await make(number));
  return ids;
}
