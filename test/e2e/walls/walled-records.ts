import {
  ArrivalCheck,
  CallTask,
  Capture,
  Closure,
  CustodyObject,
  Disturbance,
  LabQuestion,
  Parcel,
  PatientCaution,
  Photograph,
  Recall,
  ReferralTask,
  RemakeAlert,
  ScreeningFinding,
  SoreSpot,
  Tracing,
  Transfer,
  WorkloadProposal,
  WorkloadRun,
  uuidv7,
} from '@archwright/records';
import { evaluateTracing } from '@archwright/tracing';
import type { EntityManager } from 'typeorm';
import { NOW } from '../practice/demo-api.js';

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
  readonly photograph: string;
  /** One that was taken away. */
  readonly photographGone: string;
  readonly soreSpot: string;
  readonly referral: string;
  readonly recall: string;
  readonly transfer: string;
  readonly caution: string;
  readonly finding: string;
  readonly workloadRun: string;
  readonly workloadProposal: string;
  /** Of the same search, for the case. */
  readonly visitProposal: string;
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

export async function writeDisturbance(tx: EntityManager, chairId: string, enteredBy: string): Promise<string> {
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

/** What the day brings: a call to make, a question of the laboratory, an alert. */
export async function writeOpenMatters(
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
export async function writeCustody(
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
export async function writeAftercare(
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
export async function writeClosure(tx: EntityManager, clinicId: string): Promise<Pick<Records, 'closure'>> {
  const closure = uuidv7();
  const days = { fromOn: '2026-12-25', untilOn: '2026-12-26' };
  await tx.insert(Closure, { id: closure, clinicId, ...days, reason: 'A test of walls.' });
  return { closure };
}

/** A value that stands out at the visit. */
export async function writeFinding(
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
export async function writeTracing(tx: EntityManager, stageId: string, recordedBy: string): Promise<void> {
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

/** A search that has ended, with a proposal that nobody has decided. */
export async function writeWorkload(
  tx: EntityManager,
  { laboratoryId, caseId, ...named }: { laboratoryId: string; caseId: string; patientId: string; patientName: string },
  askedBy: string,
): Promise<Pick<Records, 'workloadRun' | 'workloadProposal' | 'visitProposal'>> {
  const [workloadRun, workloadProposal, visitProposal] = [uuidv7(), uuidv7(), uuidv7()];
  const [askedAt, finishedAt] = [new Date('2026-01-01T08:00:00Z'), new Date('2026-01-01T08:01:00Z')];
  const search = { seed: 1, streams: 1, epochs: 1 };
  const ended = { ...search, state: 'finished' as const, weeks: 1, seconds: 1, askedAt, askedBy, finishedAt };
  await tx.insert(WorkloadRun, { ...ended, id: workloadRun, laboratoryId });
  const standing = { lateCases: 0, lateMinutes: 0, fullDays: 0 };
  const shown = {
    ...{ title: 'A proposal', sentence: 'Nothing moves.', certainty: 'None.', before: standing, after: standing },
    ...{ moves: [], visits: [], days: [], overtime: [] },
  };
  const proposal = { ...search, runId: workloadRun, shown, objective: {}, bound: {}, state: 'open' as const };
  const moves = { moved: [], basedOn: { cases: [], steps: [] } };
  await tx.insert(WorkloadProposal, { ...proposal, id: workloadProposal, kind: 'within-slack', moves });
  // The name is what the walls look for.
  const call = { ...named, phone: null, byMail: false, sentence: 'A test of walls.' };
  const plan = { visits: [], labSteps: [], transports: [], deliveryOn: null };
  const ripple = { id: uuidv7(), planHash: 'of a plan', caseId, sentence: 'Nothing moves.', calls: [call], plan };
  const ripples = [{ ...ripple, visits: [], labSteps: [], untouchedVisits: 0 }];
  await tx.insert(WorkloadProposal, { ...proposal, id: visitProposal, kind: 'free-visits', moves: { ripples } });
  return { workloadRun, workloadProposal, visitProposal };
}

/** Its bytes are never looked at here. */
export async function writePhotographs(
  tx: EntityManager,
  stageId: string,
  recordedBy: string,
): Promise<Pick<Records, 'photograph' | 'photographGone'>> {
  const written = { photograph: uuidv7(), photographGone: uuidv7() };
  const common = { stageId, caption: 'A test of walls.', widthPx: 4, heightPx: 3, recordedAt: NOW, recordedBy };
  const removed = { removedAt: NOW, removedBy: recordedBy, removalReason: 'A test of walls.' };
  await tx.insert(Photograph, { id: written.photograph, ...common, picture: Buffer.from('a picture') });
  await tx.insert(Photograph, { id: written.photographGone, ...common, ...removed, picture: null });
  return written;
}
