import { localDate } from '@archwright/calendar';
import type { CaseView, OpenCase } from '@archwright/contracts';
import {
  Clinic,
  Patient,
  TreatmentCase,
  appendCaseEvent,
  nextCaseNumber,
  recordAudit,
  uuidv7,
} from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError, RecordNotFoundError, WrongStateError } from '../errors.js';
import { clinicScope, requirePatient } from '../patients/patient-access.js';
import { requireClinician } from './known-clinician.js';
import { layOut, layOutFirstStage } from './lay-out.js';
import { noteFollowing, requireParent } from './linked-cases.js';
import { chainToPin, pinPaths } from './pinned-paths.js';
import { viewCase } from './view-case.js';
import { visitPlaceFields } from './visit-place.js';

/**
 * Opens a case on the path versions given, which it keeps: stages wait, laboratory work is unplanned. An enquiry has the
 * first visit only.
 *
 * @throws {RecordNotFoundError} for a patient, clinic, clinician, path or parent case that the actor may not see
 * @throws {NotYoursError} when none of the clinics is one of the actor's
 * @throws {WrongStateError} when the patient has died, a path may no longer be followed, or the case before placed nothing
 */
export async function openCase(tx: EntityManager, actor: Actor, body: OpenCase, now: Date): Promise<CaseView> {
  await requirePatient(tx, actor, body.patientId);
  const patient = await tx.findOneByOrFail(Patient, { id: body.patientId });
  if (patient.diedOn !== null) throw new WrongStateError('The patient', 'recorded as dead', 'a living patient');
  const home = await homeClinic(tx, actor, body.clinicIds);
  if (body.clinicianId !== null) await requireClinician(tx, body.clinicianId);
  await requireParent(tx, actor, body);
  const chain = await chainToPin(tx, body.arches);
  const id = uuidv7();
  const number = await nextCaseNumber(tx, Number(localDate(now.getTime(), home.zone).slice(0, 4)));
  await tx.insert(TreatmentCase, {
    id,
    number,
    patientId: patient.id,
    state: body.enquiry ? 'enquiry' : 'open',
    parentCaseId: body.parentCaseId,
    homeClinicId: home.id,
    clinicIds: [...new Set(body.clinicIds)],
    clinicianId: body.clinicianId,
    wishes: body.wishes ?? patient.wishes,
    ...visitPlaceFields(body.visitPlace),
    openedAt: now,
  });
  await pinPaths(tx, id, body.arches, body.enquiry);
  if (body.enquiry) await layOutFirstStage(tx, id, chain);
  else await layOut(tx, id, chain);
  await note(tx, actor, id, body, now);
  await noteFollowing(tx, actor, { id, number, parentCaseId: body.parentCaseId }, now);
  return viewCase(tx, actor, id, now);
}

/** The first of the clinics that the actor works at. */
async function homeClinic(tx: EntityManager, actor: Actor, clinicIds: readonly string[]): Promise<Clinic> {
  const clinics = await tx.findBy(Clinic, { id: In([...clinicIds]) });
  const unknown = clinicIds.find((id) => clinics.every((clinic) => clinic.id !== id));
  if (unknown !== undefined) throw new RecordNotFoundError('clinic', unknown);
  const scope = clinicScope(actor);
  const homeId = clinicIds.find((id) => scope === null || scope.includes(id));
  const home = clinics.find(({ id }) => id === homeId);
  if (home === undefined)
    throw new NotYoursError('You work at none of these clinics. Name at least one of your own clinics.');
  return home;
}

async function note(tx: EntityManager, actor: Actor, caseId: string, body: OpenCase, now: Date): Promise<void> {
  const { arches, clinicIds, enquiry } = body;
  await appendCaseEvent(tx, {
    caseId,
    kind: enquiry ? 'enquiry-opened' : 'case-opened',
    body: { arches, clinicIds },
    actorId: actor.userId,
    at: now,
  });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'case-opened',
    subjectKind: 'case',
    subjectId: caseId,
    details: { enquiry },
    at: now,
  });
}
