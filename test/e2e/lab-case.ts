import type { Actor } from '@archwright/casework';
import { combineArches, shippedPaths, type CaseChain } from '@archwright/protocol';
import {
  AppointmentStage,
  BenchPlace,
  CalendarRule,
  CaseArch,
  LabStep,
  Prescription,
  Resource,
  Stage,
  TreatmentPathVersion,
  UserAccount,
  WorkCentre,
  claim,
  uuidv7,
} from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { NOW, aCase, anAppointment, at, nth, type TestPractice } from './records/records-practice.js';

const HOUR_MS = 3_600_000;

export interface LabCase {
  readonly caseId: string;
  readonly chain: CaseChain;
  /** The first stretch of laboratory work, in its order; an hour each, one after the other, from `startsAt`. */
  readonly stepIds: readonly string[];
  readonly placeId: string;
  readonly workCentreId: string;
  readonly firstStageId: string;
}

/** Someone of the practice who may sign, ask and answer. */
export async function aPerson(
  tx: EntityManager,
  practice: TestPractice,
  role: 'lab' | 'clinician' | 'manager' | 'front-desk',
  more: { laboratoryIds?: string[]; practitionerId?: string } = {},
): Promise<Actor> {
  const userId = uuidv7();
  const scope = {
    clinicIds: role === 'lab' ? [] : [practice.clinicId],
    laboratoryIds: more.laboratoryIds ?? (role === 'lab' ? [practice.laboratoryId] : []),
    practitionerId: more.practitionerId ?? null,
  };
  await tx.insert(UserAccount, {
    ...scope,
    id: userId,
    name: `A ${role}`,
    role,
    passwordHash: '$argon2id$unused',
    mail: `${role}@practice.example`,
    locale: 'en',
  });
  return { ...scope, organisationId: practice.organisationId, userId, role };
}

/** The laboratory works Monday to Friday, 8:00 to 17:00 of its own clock. */
export async function openLaboratory(tx: EntityManager, { laboratoryId }: TestPractice): Promise<void> {
  await tx.insert(CalendarRule, {
    id: uuidv7(),
    laboratoryId,
    startOn: '2027-01-04',
    startsLocal: '08:00',
    minutes: 540,
    rrule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR',
    exceptLocal: [],
  });
}

/** A case on the digital path, both arches, whose first laboratory work is planned for a bench of its own. */
export async function aLabCase(
  tx: EntityManager,
  practice: TestPractice,
  { startsAt = at('08:00'), visitAt = at('09:00', 3) }: { startsAt?: Date; visitAt?: Date } = {},
): Promise<LabCase> {
  const path = shippedPaths.find(({ code }) => code === 'digital-printed-bases');
  if (path === undefined) throw new Error('The digital path is not shipped.');
  const chain = combineArches({ upper: path, lower: path });
  const { caseId, patientId } = await aCase(tx, practice);
  const pathVersionId = await published(tx, path);
  await tx.update(CaseArch, { caseId }, { pathVersionId });
  await tx.insert(CaseArch, { id: uuidv7(), caseId, arch: 'lower', pathVersionId });
  const stageIds = new Map<string, string>();
  for (const { code, position, arches } of chain.stages) {
    const id = uuidv7();
    stageIds.set(code, id);
    await tx.insert(Stage, { id, caseId, code, position, arches: [...arches], state: 'waiting' });
  }
  const phase = nth(chain.phases, 0);
  const endsAt = new Date(visitAt.getTime() + HOUR_MS);
  const appointmentId = await anAppointment(tx, practice, { patientId, startsAt: visitAt, endsAt });
  const beforeStageId = idOf(stageIds, phase.beforeStage);
  await tx.insert(AppointmentStage, { id: uuidv7(), appointmentId, stageId: beforeStageId });
  const bench = await aBench(tx, practice);
  const stepIds: string[] = [];
  for (const [index, code] of phase.steps.entries()) {
    const from = new Date(startsAt.getTime() + index * HOUR_MS);
    stepIds.push(await aStep(tx, practice, { caseId, chain, code, from, bench }));
  }
  return { caseId, chain, stepIds, firstStageId: idOf(stageIds, phase.afterStage), ...bench };
}

/** The clinician's work order, as signing it leaves it behind. */
export async function sign(tx: EntityManager, { caseId, firstStageId }: LabCase, clinician: Actor): Promise<void> {
  if (clinician.userId === null) throw new Error('A person signs.');
  await tx.insert(Prescription, {
    id: uuidv7(),
    caseId,
    stageId: firstStageId,
    content: {},
    signedBy: clinician.userId,
    signedAt: NOW,
  });
}

interface Bench {
  readonly workCentreId: string;
  readonly placeId: string;
}

async function aBench(tx: EntityManager, { laboratoryId }: TestPractice): Promise<Bench> {
  const workCentreId = uuidv7();
  const placeId = uuidv7();
  const code = `bench-${workCentreId.slice(-8)}`;
  await tx.insert(WorkCentre, { id: workCentreId, laboratoryId, code, name: 'Bench' });
  await tx.insert(Resource, { id: placeId, kind: 'place', label: 'Place' });
  await tx.insert(BenchPlace, { id: placeId, workCentreId, number: 1, label: 'Place 1' });
  return { workCentreId, placeId };
}

async function aStep(
  tx: EntityManager,
  practice: TestPractice,
  { caseId, chain, code, from, bench }: { caseId: string; chain: CaseChain; code: string; from: Date; bench: Bench },
): Promise<string> {
  const part = chain.steps.find((step) => step.code === code);
  if (part === undefined) throw new Error(`The chain has no step ${code}.`);
  const id = uuidv7();
  const until = new Date(from.getTime() + HOUR_MS);
  await tx.insert(LabStep, {
    ...bench,
    id,
    caseId,
    code,
    arches: [...part.arches],
    phase: part.phase,
    afterStage: part.afterStage,
    beforeStage: part.beforeStage,
    laboratoryId: practice.laboratoryId,
    startsAt: from,
    endsAt: until,
    segments: [{ kind: 'hands-on', startsAt: from.toISOString(), endsAt: until.toISOString(), holdsPlace: true }],
    state: 'planned',
  });
  await claim(tx, [{ resourceId: bench.placeId, startsAt: from, endsAt: until, purpose: 'lab', labStepId: id }], NOW);
  return id;
}

async function published(tx: EntityManager, path: (typeof shippedPaths)[number]): Promise<string> {
  const known = await tx.findOneBy(TreatmentPathVersion, { code: path.code });
  if (known !== null) return known.id;
  const id = uuidv7();
  await tx.insert(TreatmentPathVersion, { id, code: path.code, version: 1, document: path, documentHash: 'x' });
  return id;
}

function idOf(ids: ReadonlyMap<string, string>, code: string): string {
  const id = ids.get(code);
  if (id === undefined) throw new Error(`The chain has no stage ${code}.`);
  return id;
}
