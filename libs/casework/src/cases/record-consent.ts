import { localDate } from '@archwright/calendar';
import type { CaseView, RecordConsent } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Clinic, TreatmentCase, appendCaseEvent, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { lockCaseAt } from './lock-case.js';
import { viewCase } from './view-case.js';

/**
 * Dates the decisions and questions without which no final impression is taken and no work ordered.
 *
 * @throws {RequestInvalidError} for a date that has not come yet
 */
export async function recordConsent(
  tx: EntityManager,
  actor: Actor,
  { caseId, version }: { readonly caseId: string; readonly version: number },
  body: RecordConsent,
  now: Date,
): Promise<CaseView> {
  const { homeClinicId } = await lockCaseAt(tx, actor, caseId, version);
  const { zone } = await tx.findOneByOrFail(Clinic, { id: homeClinicId });
  requirePast(body, localDate(now.getTime(), zone));
  await tx.update(TreatmentCase, { id: caseId }, { ...body, version: version + 1 });
  await appendCaseEvent(tx, { caseId, kind: 'consent-recorded', body, actorId: actor.userId, at: now });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'consent-recorded',
    subjectKind: 'case',
    subjectId: caseId,
    details: body,
    at: now,
  });
  return viewCase(tx, actor, caseId, now);
}

function requirePast(body: RecordConsent, today: string): void {
  const late = Object.entries(body).filter(([, on]) => on !== null && on > today);
  if (late.length === 0) return;
  throw new RequestInvalidError(
    late.map(([path]) => ({ path, problem: 'lies in the future', accepted: `a date up to ${today}` })),
  );
}
