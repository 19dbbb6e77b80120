import { hashPassword } from '@archwright/casework';
import { caseView, holdView, offersView, patientView, practiceView, ripple, type Role } from '@archwright/contracts';
import {
  ArrivalCheck,
  CallTask,
  Capture,
  Clinic,
  Closure,
  CustodyObject,
  Directory,
  Disturbance,
  LabQuestion,
  Organisation,
  Parcel,
  Patient,
  PatientCaution,
  Recall,
  ReferralTask,
  RemakeAlert,
  ScreeningFinding,
  SoreSpot,
  Tracing,
  Transfer,
  UserAccount,
  WorkloadProposal,
  WorkloadRun,
  inOrganisation,
  listOrganisations,
  uuidv7,
} from '@archwright/records';
import { evaluateTracing } from '@archwright/tracing';
import type { EntityManager } from 'typeorm';
import { ApiSession } from '../../../apps/cli/src/demo/api-session.js';
import { demoPassword } from '../../../apps/cli/src/demo/scenario.js';
import { NOW, cookieOf, openDemoApi, postSession, type DemoApi } from '../practice/demo-api.js';

export const ROLES: readonly Role[] = ['front-desk', 'lab', 'clinician', 'manager', 'administrator'];
/** Where a caller stands towards the records that are asked for. */
export const PLACES = ['own', 'otherClinic', 'otherOrganisation'] as const;
export type Place = (typeof PLACES)[number];

/** No answer to a stranger may hold it. */
export const PATIENT_NAME = 'Walled-In';

/** Ids of one of each, all of one case in one clinic. */
export interface Records {
  readonly patient: string;
  readonly case: string;
  /** Another case of the same patient, with an active hold. */
  readonly heldCase: string;
  readonly hold: string;
  readonly offer: string;
  readonly appointment: string;
  readonly stage: string;
  readonly stageCode: string;
  readonly labStep: string;
  readonly question: string;
  readonly callTask: string;
  readonly alert: string;
  readonly ripple: string;
  readonly object: string;
  readonly parcel: string;
  readonly arrivalCheck: string;
  readonly soreSpot: string;
  readonly referral: string;
  readonly recall: string;
  readonly transfer: string;
  readonly caution: string;
  readonly finding: string;
  readonly workloadRun: string;
  readonly workloadProposal: string;
  readonly closure: string;
  /** An account of the clinic's front desk. */
  readonly user: string;
  readonly clinic: string;
  readonly chair: string;
  readonly disturbance: string;
  readonly clinician: string;
  readonly laboratory: string;
  readonly pathVersion: string;
  /** Day of the appointment. */
  readonly on: string;
}

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
      disturbance: await writeDisturbance(tx, chair.id, asker),
      ...(await writeFinding(tx, ids.stage, clinic.id, asker)),
      ...(await writeWorkload(tx, laboratory.id, asker)),
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

async function writeDisturbance(tx: EntityManager, chairId: string, enteredBy: string): Promise<string> {
  const id = uuidv7();
  const times = { startsAt: new Date('2027-03-01T08:00:00Z'), endsAt: new Date('2027-03-01T17:00:00Z') };
  await tx.insert(Disturbance, {
    ...times,
    id,
    resourceId: chairId,
    reason: 'A test of walls.',
    state: 'open',
    enteredBy,
  });
  return id;
}

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

/** What the day brings: a call to make, a question of the laboratory, an alert. */
async function writeOpenMatters(
  tx: EntityManager,
  ids: Pick<Records, 'patient' | 'case' | 'stage' | 'labStep' | 'appointment'>,
  returnToStage: string,
  askedBy: string,
): Promise<Pick<Records, 'callTask' | 'question' | 'alert'>> {
  const written = { callTask: uuidv7(), question: uuidv7(), alert: uuidv7() };
  await tx.insert(CallTask, {
    id: written.callTask,
    patientId: ids.patient,
    caseId: ids.case,
    appointmentId: ids.appointment,
    reason: 'A test of walls.',
    state: 'open',
    dueAt: NOW,
  });
  await tx.insert(LabQuestion, {
    id: written.question,
    caseId: ids.case,
    labStepId: ids.labStep,
    question: 'Which shade?',
    askedBy,
    escalatesAt: new Date(NOW.getTime() + 86_400_000),
  });
  await tx.insert(RemakeAlert, {
    id: written.alert,
    caseId: ids.case,
    stageId: ids.stage,
    trigger: 'test',
    reason: 'A test of walls.',
    returnToStage,
    arches: ['upper'],
    discards: [],
    state: 'open',
  });
  return written;
}

/** What changes hands: one object, its parcel, and a visit whose work has not come. */
async function writeCustody(
  tx: EntityManager,
  ids: Pick<Records, 'case' | 'stage' | 'appointment'>,
  at: { clinicId: string; laboratoryId: string },
  by: string,
): Promise<Pick<Records, 'object' | 'parcel' | 'arrivalCheck'>> {
  const written = { object: uuidv7(), parcel: uuidv7(), arrivalCheck: uuidv7() };
  await tx.insert(CustodyObject, {
    id: written.object,
    caseId: ids.case,
    code: 'WALLS-1',
    kind: 'old-denture',
    arch: 'upper',
    holder: 'clinic',
    clinicId: at.clinicId,
    state: 'in-use',
  });
  await tx.insert(Parcel, {
    ...at,
    id: written.parcel,
    direction: 'to-lab',
    state: 'packed',
    packedAt: NOW,
    packedBy: by,
  });
  await tx.insert(ArrivalCheck, {
    id: written.arrivalCheck,
    caseId: ids.case,
    stageId: ids.stage,
    appointmentId: ids.appointment,
    appointmentSequence: 0,
    state: 'open',
    missing: ['Repaired denture'],
    reason: 'A test of walls.',
    lookAt: NOW,
    raisedAt: NOW,
  });
  return written;
}

/** What a placement leaves behind, a caution, and a case about to go to another clinic. */
async function writeAftercare(
  tx: EntityManager,
  ids: Pick<Records, 'patient' | 'case'>,
  fromClinicId: string,
  by: string,
): Promise<Pick<Records, 'soreSpot' | 'referral' | 'recall' | 'transfer' | 'caution'>> {
  const written = { soreSpot: uuidv7(), referral: uuidv7(), recall: uuidv7(), transfer: uuidv7(), caution: uuidv7() };
  const caseId = ids.case;
  await tx.insert(SoreSpot, {
    id: written.soreSpot,
    caseId,
    arch: 'upper',
    region: 'tuberosity-right',
    side: 'right',
    foundOn: '2026-01-05',
    foundBy: by,
    pain: 3,
    suspectedCause: 'long-border',
  });
  await tx.insert(ReferralTask, {
    id: written.referral,
    caseId,
    soreSpotId: written.soreSpot,
    reason: 'A test of walls.',
    dueOn: '2026-02-05',
    state: 'open',
  });
  await tx.insert(Recall, { id: written.recall, caseId, kind: 'recall', dueOn: '2027-02-05', state: 'due' });
  await tx.insert(Transfer, {
    id: written.transfer,
    caseId,
    fromClinicId,
    toName: 'Another practice',
    reason: 'A test of walls.',
    state: 'proposed',
    proposedBy: by,
  });
  await tx.insert(PatientCaution, {
    id: written.caution,
    patientId: ids.patient,
    kind: 'other',
    note: 'A test of walls.',
    recordedBy: by,
  });
  return written;
}

/** A day long gone on which the clinic was closed. */
async function writeClosure(tx: EntityManager, clinicId: string): Promise<Pick<Records, 'closure'>> {
  const closure = uuidv7();
  const days = { fromOn: '2026-12-25', untilOn: '2026-12-26' };
  await tx.insert(Closure, { id: closure, clinicId, ...days, reason: 'A test of walls.' });
  return { closure };
}

/** A value that stands out at the visit. */
async function writeFinding(
  tx: EntityManager,
  stageId: string,
  clinicId: string,
  recordedBy: string,
): Promise<Pick<Records, 'finding'>> {
  const written = { finding: uuidv7() };
  const captureId = uuidv7();
  const at = { checkedAt: NOW, screenedAt: NOW };
  await tx.insert(Capture, { id: captureId, stageId, clinicId, recordedBy, otherCentricRelation: [], ...at });
  await tx.insert(ScreeningFinding, {
    id: written.finding,
    effect: 'a test of walls',
    kind: 'value',
    comparedWith: 'clinic',
    groupSize: 30,
    code: 'occlusal-vertical-dimension',
    captureId,
    stageId,
    clinicId,
    evidence: {},
    sentence: 'A test of walls.',
    foundAt: NOW,
  });
  return written;
}

/** One that was drawn at the visit. */
async function writeTracing(tx: EntityManager, stageId: string, recordedBy: string): Promise<void> {
  const captureId = uuidv7();
  await tx.insert(Capture, {
    id: captureId,
    stageId,
    clinicId: null,
    otherCentricRelation: [],
    recordedBy,
    checkedAt: NOW,
    screenedAt: NOW,
  });
  const points = [1, 2, 3].flatMap((step) => [
    { phase: 'right' as const, x: step, y: step },
    { phase: 'left' as const, x: -step, y: step },
  ]);
  const seen = { stylusOn: 'lower', view: 'as-worn' } as const;
  const evaluation = evaluateTracing({ points, ...seen });
  const entry = { ...seen, posture: 'upright', apex: 'single', basesMoved: false, contact: false, pain: false };
  await tx.insert(Tracing, { id: uuidv7(), captureId, stageId, attempt: 1, entry, points, evaluation });
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

/** A search that has ended, with a proposal that nobody has decided. */
async function writeWorkload(
  tx: EntityManager,
  laboratoryId: string,
  askedBy: string,
): Promise<Pick<Records, 'workloadRun' | 'workloadProposal'>> {
  const [workloadRun, workloadProposal] = [uuidv7(), uuidv7()];
  const [askedAt, finishedAt] = [new Date('2026-01-01T08:00:00Z'), new Date('2026-01-01T08:01:00Z')];
  const search = { seed: 1, streams: 1, epochs: 1 };
  const ended = { ...search, state: 'finished' as const, weeks: 1, seconds: 1, askedAt, askedBy, finishedAt };
  await tx.insert(WorkloadRun, { ...ended, id: workloadRun, laboratoryId });
  const standing = { lateCases: 0, lateMinutes: 0, fullDays: 0 };
  const shown = {
    ...{ title: 'A proposal', sentence: 'Nothing moves.', certainty: 'None.', before: standing, after: standing },
    ...{ moves: [], days: [], overtime: [] },
  };
  await tx.insert(WorkloadProposal, {
    ...search,
    id: workloadProposal,
    runId: workloadRun,
    kind: 'within-slack',
    moves: { moved: [], basedOn: { cases: [], steps: [] } },
    shown,
    objective: {},
    bound: {},
    state: 'open',
  });
  return { workloadRun, workloadProposal };
}
