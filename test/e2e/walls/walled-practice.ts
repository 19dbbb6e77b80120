import { hashPassword } from '@archwright/casework';
import { caseView, holdView, offersView, patientView, practiceView, ripple, type Role } from '@archwright/contracts';
import {
  Clinic,
  Directory,
  Organisation,
  Patient,
  UserAccount,
  inOrganisation,
  listOrganisations,
  uuidv7,
} from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { ApiSession } from '../../../apps/cli/src/demo/api-session.js';
import { demoPassword } from '../../../apps/cli/src/demo/scenario.js';
import { cookieOf, openDemoApi, postSession, type DemoApi } from '../practice/demo-api.js';
import {
  writeDisturbance,
  writeOpenMatters,
  writeCustody,
  writeAftercare,
  writeClosure,
  writeFinding,
  writePhotographs,
  writeTracing,
  writeWorkload,
  type Records,
} from './walled-records.js';

export const ROLES: readonly Role[] = ['front-desk', 'lab', 'clinician', 'manager', 'administrator'];
/** Where a caller stands towards the records that are asked for. */
export const PLACES = ['own', 'otherClinic', 'otherOrganisation'] as const;
export type Place = (typeof PLACES)[number];

/** No answer to a stranger may hold it. */
export const PATIENT_NAME = 'Walled-In';

export interface WalledPractice {
  readonly url: string;
  readonly records: Records;
  /** The cookie of a signed-in person. */
  cookie(place: Place, role: Role): string;
  close(): Promise<void>;
}

export async function openWalledPractice(): Promise<WalledPractice> {
  const api = await openDemoApi();
  const [organisationId = ''] = await listOrganisations(api.db);
  const desk = new ApiSession(api.url.replace('/api/v1', ''));
  await desk.signIn('desk@example.test', demoPassword);
  const practice = await desk.call({ method: 'GET', path: '/practice', answer: practiceView });
  const [clinic, otherClinic] = practice.clinics;
  const [laboratory] = practice.laboratories;
  const chair = clinic?.chairs[0];
  const clinician = clinic?.clinicians[0];
  const path = practice.paths.find(({ code }) => code === 'repair');
  if (!clinic || !otherClinic || !laboratory || !chair || !clinician || !path)
    throw new Error('The demonstration lacks something.');

  const patient = await desk.call({
    method: 'POST',
    path: '/patients',
    answer: patientView,
    body: { givenName: 'Wanda', familyName: PATIENT_NAME, birthOn: '1950-02-03', zone: 'Europe/London' },
  });
  const keepTime = async () => {
    const arches = [{ arch: 'upper', pathVersionId: path.versionId }];
    const body = { patientId: patient.id, arches, clinicIds: [clinic.id] };
    const opened = await desk.call({ method: 'POST', path: '/cases', body, answer: caseView });
    const asked = { method: 'POST', path: `/cases/${opened.id}/offers`, body: { count: 1 } } as const;
    const [offer] = (await desk.call({ ...asked, answer: offersView })).offers;
    const hold = await desk.call({
      method: 'POST',
      path: `/cases/${opened.id}/holds`,
      body: { offerId: offer?.id, kind: 'phone' },
      answer: holdView,
    });
    return { caseId: opened.id, offerId: offer?.id ?? '', hold };
  };
  const booked = await keepTime();
  const treated = await desk.call({
    method: 'POST',
    path: `/holds/${booked.hold.id}/confirm`,
    body: { planHash: booked.hold.planHash },
    answer: caseView,
  });
  const held = await keepTime();
  const visit = treated.stages.find(({ appointmentId }) => appointmentId !== null);
  const step = treated.labSteps[0];
  if (visit?.appointmentId == null || visit.startsAt === null || step === undefined) {
    throw new Error('The booked case has no visit or no laboratory work.');
  }
  const preview = await desk.call({
    method: 'POST',
    path: '/ripples/cancel',
    body: { appointmentId: visit.appointmentId, reason: 'A test of walls.', then: 'drop-rest' },
    answer: ripple,
  });

  const ids = {
    patient: patient.id,
    case: treated.id,
    stage: visit.id,
    labStep: step.id,
    appointment: visit.appointmentId,
  };
  const passwordHash = await hashPassword(demoPassword);
  const written = await inOrganisation(api.db, organisationId, async (tx) => {
    const own = { clinicIds: [clinic.id], laboratoryIds: [laboratory.id], passwordHash };
    const other = { clinicIds: [otherClinic.id], laboratoryIds: [], passwordHash };
    // A patient who names no clinic is the whole organisation's.
    await tx.update(Patient, { id: patient.id }, { acceptedClinicIds: [clinic.id] });
    const [asker = ''] = await writeAccounts(tx, organisationId, 'own', own);
    await writeAccounts(tx, organisationId, 'otherClinic', other);
    await writeTracing(tx, ids.stage, asker);
    return {
      ...(await writeOpenMatters(tx, ids, visit.code, asker)),
      ...(await writeCustody(tx, ids, { clinicId: clinic.id, laboratoryId: laboratory.id }, asker)),
      ...(await writeAftercare(tx, ids, clinic.id, asker)),
      ...(await writePhotographs(tx, ids.stage, asker)),
      disturbance: await writeDisturbance(tx, chair.id, asker),
      ...(await writeFinding(tx, ids.stage, clinic.id, asker)),
      ...(await writeWorkload(
        tx,
        { laboratoryId: laboratory.id, caseId: ids.case, patientId: ids.patient, patientName: PATIENT_NAME },
        asker,
      )),
      ...(await writeClosure(tx, clinic.id)),
      user: asker,
    };
  });
  await writeOtherOrganisation(api, passwordHash);
  const cookies = await signAllIn(api);
  return {
    url: api.url,
    records: {
      ...ids,
      ...written,
      heldCase: held.caseId,
      hold: held.hold.id,
      offer: booked.offerId,
      stageCode: visit.code,
      ripple: preview.id,
      clinic: clinic.id,
      chair: chair.id,
      clinician: clinician.id,
      laboratory: laboratory.id,
      pathVersion: path.versionId,
      on: visit.startsAt.slice(0, 10),
    },
    cookie: (place, role) => cookies.get(nameOf(place, role)) ?? '',
    close: () => api.close(),
  };
}

const nameOf = (place: Place, role: Role): string => `${place}-${role}@walls.example.test`.toLowerCase();

/** @returns the accounts' ids, in the order of the roles */
async function writeAccounts(
  tx: EntityManager,
  organisationId: string,
  place: Place,
  account: { clinicIds: string[]; laboratoryIds: string[]; passwordHash: string },
): Promise<string[]> {
  const ids: string[] = [];
  for (const role of ROLES) {
    const id = uuidv7();
    ids.push(id);
    await tx.insert(UserAccount, {
      ...account,
      id,
      name: `${place} ${role}`,
      role,
      locale: 'en',
      practitionerId: null,
    });
    const signInName = nameOf(place, role);
    await tx.insert(Directory, { id: uuidv7(), kind: 'sign-in', organisationId, signInName, userId: id });
  }
  return ids;
}

async function writeOtherOrganisation(api: DemoApi, passwordHash: string): Promise<void> {
  const organisationId = uuidv7();
  await inOrganisation(api.db, organisationId, async (tx) => {
    const settings = {
      reminderLeadMinutes: { mail: [2880], phone: [] },
      quietHours: { from: '20:00', to: '08:00' },
      phoneHoldMinutes: 15,
      provisionalHoldMinutes: 2880,
    };
    await tx.insert(Organisation, { id: organisationId, name: 'Strangers', kind: 'practice', locale: 'en', settings });
    const clinicId = uuidv7();
    await tx.insert(Clinic, { id: clinicId, name: 'Strangers’ clinic', zone: 'Europe/London', address: '3 Far Away' });
    const account = { clinicIds: [clinicId], laboratoryIds: [], passwordHash };
    await writeAccounts(tx, organisationId, 'otherOrganisation', account);
  });
}

async function signAllIn(api: DemoApi): Promise<Map<string, string>> {
  const cookies = new Map<string, string>();
  for (const place of PLACES) {
    for (const role of ROLES) {
      const signInName = nameOf(place, role);
      cookies.set(signInName, cookieOf(await postSession(api.url, { signInName, password: demoPassword })));
    }
  }
  return cookies;
}
