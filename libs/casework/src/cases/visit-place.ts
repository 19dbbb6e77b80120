import type { CaseView, SetVisitPlace } from '@archwright/contracts';
import { TreatmentCase, appendCaseEvent, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { lockCaseAt } from './lock-case.js';
import { viewCase } from './view-case.js';

export function visitPlaceFields(body: SetVisitPlace): Pick<TreatmentCase, 'visitPlace' | 'homeTravelMinutes'> {
  return { visitPlace: body.place, homeTravelMinutes: body.place === 'clinic' ? null : body.travelMinutes };
}

/**
 * Says where the visits are made from now on. What is booked stays as it is until it is planned anew.
 *
 * @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics
 */
export async function changeVisitPlace(
  tx: EntityManager,
  actor: Actor,
  { caseId, version }: { readonly caseId: string; readonly version: number },
  body: SetVisitPlace,
  now: Date,
): Promise<CaseView> {
  await lockCaseAt(tx, actor, caseId, version);
  await tx.update(TreatmentCase, { id: caseId }, { ...visitPlaceFields(body), version: version + 1 });
  const sentence = `Visits are planned at ${body.place === 'clinic' ? 'the clinic' : `the patient's ${body.place.replace('-', ' ')}`}.`;
  await appendCaseEvent(tx, {
    caseId,
    kind: 'visit-place-changed',
    body: { ...body, sentence },
    actorId: actor.userId,
    at: now,
  });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'visit-place-changed',
    subjectKind: 'case',
    subjectId: caseId,
    details: body,
    at: now,
  });
  return viewCase(tx, actor, caseId, now);
}
