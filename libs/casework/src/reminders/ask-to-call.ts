import type { Told } from '@archwright/contracts';
import { CallTask, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { inEnglish } from '../tell.js';

type About = Pick<CallTask, 'patientId' | 'caseId' | 'appointmentId'>;

/** Puts a patient on the call list of the front desk, due now. @returns the id of the call */
export async function askToCall(
  tx: EntityManager,
  { patientId, caseId, appointmentId }: About,
  told: Told,
  now: Date,
): Promise<string> {
  const id = uuidv7();
  const about = { patientId, caseId, appointmentId, reason: inEnglish(told), told };
  await tx.insert(CallTask, { id, ...about, state: 'open', dueAt: now, createdAt: now });
  return id;
}

/** The same, unless this call about the visit is open already. @returns whether it was not */
export async function askToCallOnce(tx: EntityManager, about: About, told: Told, now: Date): Promise<boolean> {
  const { appointmentId } = about;
  const asked = { reason: inEnglish(told), state: 'open' as const };
  if (appointmentId !== null && (await tx.existsBy(CallTask, { appointmentId, ...asked }))) return false;
  await askToCall(tx, about, told, now);
  return true;
}
